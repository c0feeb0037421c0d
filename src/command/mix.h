// A new rough from two of a page: one panel's staging from another rough, or one's arrangement with
// the other's stagings. Measured whole and written beside them under the next free name.
#pragma once

#include <filesystem>
#include <optional>
#include <string>
#include <vector>

#include "base/result.h"
#include "compose/compose.h"
#include "job/job.h"

namespace tw {

struct MixRequest {
  std::filesystem::path job;
  int page = 1;
  std::optional<int> panel;  ///< in reading order, from 1; nothing: the arrangement
  std::string from;          ///< gives the panel's staging, or the arrangement
  std::string into;          ///< gives all else
};

struct MixMade {
  Rough rough;  ///< the new one
  double scoreInto = 0, scoreFrom = 0;
  std::vector<std::string> notes;
};

/// Bad input when there is no such page, rough or panel, both are the same rough, or the script has
/// changed since they were made.
Result<MixMade> mixRoughs(const MixRequest& request);

/// The same on a page in memory; nothing is written.
Result<MixMade> mixedOn(const Job& job, const Page& page, const Workshop& workshop,
                        const MixRequest& request);

}  // namespace tw
