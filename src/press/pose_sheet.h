// Poses side by side on one sheet, each with its name and its line of action.
#pragma once

#include <filesystem>
#include <string>
#include <vector>

#include "base/result.h"
#include "geometry/drawing.h"

namespace tw {

struct PoseCell {
  std::string name, title;
  std::string note;  ///< what the line of action is, what holds the pose up
  Drawing drawing;   ///< mm from the cell's top left corner
  std::vector<std::vector<Point>> actions;
};

struct PoseSheet {
  std::string title, about;
  int columns = 8;
  double cellWide = 35, pictureHigh = 39;  ///< mm
  std::vector<PoseCell> cells;
};

/// As large as its cells need. By the file's extension: .pdf, .svg or .png.
Result<void> writePoseSheet(const std::filesystem::path& file, const PoseSheet& sheet,
                            double dpi = 200);

}  // namespace tw
