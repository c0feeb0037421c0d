// The joint search: arrangements × stagings × copy → ranked roughs that are unlike each other.
// The steps and what each costs are told in compose.cpp.
#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "base/progress.h"
#include "base/result.h"
#include "job/job.h"
#include "letter/lettering.h"
#include "review/rules.h"
#include "stage/staging.h"

namespace tw {

struct ComposeOptions {
  int keep = 6;            ///< roughs wanted, 1…26
  std::uint64_t seed = 1;  ///< another seed looks at other arrangements where costs are close
  unsigned threads = 0;    ///< 0 = all cores; the result does not depend on it
  std::vector<Rough> unlike = {};  ///< of this page: new roughs differ from these, none is one
};

/// What the search works with; made once per job.
struct Workshop {
  Stager stager;
  Letterer letterer;
  RuleBook rules;

  static Result<Workshop> make(const Job& job, const std::string& rulesFile = {},
                               Models models = {});
};

struct Composed {
  int page = 1;
  std::uint64_t counted = 0;        ///< trees that exist
  std::uint64_t sized = 0;          ///< layouts solved: trees × treatments that apply
  std::uint64_t staged = 0;         ///< layouts whose panels were staged
  bool exhaustive = true;           ///< false: only a beam of the trees was sized
  std::vector<Rough> roughs;        ///< best first, named A, B, C…
  std::vector<std::string> unmet;   ///< demands that even rough A misses, with amounts
  std::vector<std::string> unkept;  ///< pins and wishes of the artist that were not kept, and why
};

/// Roughs for the page that keep its pins. Never fails for want of a good answer; bad input when
/// the page cannot be arranged at all (no panels, too many), or stopped.
Result<Composed> compose(const Job& job, const Page& page, const Workshop& workshop,
                         const ComposeOptions& options, Progress& progress);

}  // namespace tw
