// A remedy kept: one of the changes that `tierwright read` tries is made in a rough for good. The
// state before stays in the job's .history.
#pragma once

#include <filesystem>
#include <string>
#include <vector>

#include "base/result.h"
#include "job/finding.h"

namespace tw {

struct MendRequest {
  std::filesystem::path job;
  int page = 1;
  std::string rough;   ///< empty: the chosen one, else the first
  int panel = 1;       ///< in reading order, from 1
  std::string change;  ///< as `tierwright read` words it; empty: only list the changes
};

struct Mended {
  std::string rough;
  std::vector<std::string> changes;  ///< that can be tried on the panel
  double scoreBefore = 0, scoreAfter = 0;
  std::vector<Finding> gone, fresh;  ///< findings that the change took away and brought
};

/// Bad input when there is no such page, rough, panel or change; the changes are then listed.
Result<Mended> mendPanel(const MendRequest& request);

}  // namespace tw
