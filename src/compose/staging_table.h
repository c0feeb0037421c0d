// The staging variants of each beat at each panel shape that some layout needs, solved once.
#pragma once

#include <array>
#include <compare>
#include <map>
#include <vector>

#include "arrange/layout.h"
#include "base/progress.h"
#include "compose/pins_met.h"
#include "review/page_case.h"
#include "stage/staging.h"

namespace tw {

/// What a panel asks of its staging. The request points into the page case.
StageRequest stageRequest(const PageCase& page, std::size_t panel, const Layout& layout);

class StagingTable {
 public:
  /// All must outlive the table. A pinned staging is the only variant of its panel.
  StagingTable(const PageCase& page, const Stager& stager, const PinsMet& pins)
      : page_(page), stager_(stager), pins_(pins) {}

  /// Solves the variants that these layouts need; call before `of`.
  void prepare(const std::vector<const Layout*>& layouts, unsigned threads, Progress& progress);
  /// Thread-safe after prepare().
  const std::vector<Variant>& of(std::size_t panel, const Layout& layout) const;

 private:
  /// Beat, aspect in steps of kAspectStep, and where the figure must stay in sixteenths.
  using Key = std::array<int, 6>;
  Key keyOf(std::size_t panel, const Layout& layout) const;
  StageRequest requestOf(const Key& key) const;
  std::vector<Variant> variantsOf(const Key& key) const;

  const PageCase& page_;
  const Stager& stager_;
  const PinsMet& pins_;
  std::map<Key, std::vector<Variant>> variants_;
};

}  // namespace tw
