// One panel drawn several times, on one landscape sheet: how it is, and what it could be.
#pragma once

#include <filesystem>
#include <string>
#include <vector>

#include "base/result.h"
#include "geometry/drawing.h"

namespace tw {

struct SheetCell {
  std::string number;              ///< "1", or empty for the panel as it is
  std::string name;                ///< "right arm raised"
  std::vector<std::string> facts;  ///< a few words each, one line each
  Drawing drawing;                 ///< on the page, mm
};

struct VariantSheet {
  std::string title, about;  ///< left and right in the head
  std::string foot;          ///< explains the figures
  Polygon outline;           ///< of the panel, on the page, mm
  std::vector<SheetCell> cells;
};

/// A .png or .svg file, by the end of its name.
Result<void> writeVariantSheet(const std::filesystem::path& file, const VariantSheet& sheet);

}  // namespace tw
