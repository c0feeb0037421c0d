// The poses the program knows, as a list and as a sheet to look at.
#pragma once

#include <filesystem>
#include <string>
#include <vector>

#include "base/progress.h"
#include "base/result.h"

namespace tw {

struct PoseFact {
  std::string name, title;
  std::string line;     ///< of action: "C", "S", …
  std::string support;  ///< what carries the weight
  std::string balance;  ///< "stands, 6 cm inside its support"; for two: the widest gap of a hand
  std::vector<std::string> beyond;  ///< joints bent farther than people can
};

/// Every pose for one, or with `pairs` for two.
Result<std::vector<PoseFact>> poseFacts(bool pairs);

struct PoseSheetRequest {
  std::vector<std::filesystem::path> files;  ///< .png, .svg or .pdf
  bool pairs = false;
  double dpi = 200;
  unsigned threads = 0;
};
Result<void> writePoseSheets(const PoseSheetRequest& request, Progress& progress);

}  // namespace tw
