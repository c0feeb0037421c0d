// A page's board to print and pencil on.
#pragma once

#include <filesystem>
#include <string>

#include "base/result.h"
#include "press/board_sheet.h"

namespace tw {

struct BoardRequest {
  std::filesystem::path job;
  int page = 1;
  std::string rough;                         ///< empty: the chosen one, else the first
  std::vector<std::filesystem::path> files;  ///< .pdf, .svg or .png
  BoardSheet board;
  double dpi = 300;
};

/// Bad input when there is no such page or rough.
Result<void> makeBoard(const BoardRequest& request);

}  // namespace tw
