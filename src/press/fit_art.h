// Three ways to place one figure on its page, side by side on one sheet: page in outline, the
// figure as inked, what is lost dashed, what it enters tinted, and the numbers below.
#pragma once

#include <filesystem>
#include <string>
#include <vector>

#include "base/result.h"
#include "geometry/drawing.h"
#include "job/sheet.h"

namespace tw {

/// One of the three; places in mm on the page.
struct FitColumn {
  std::string heading;               ///< "Whole", "Cut at the thigh", …
  std::string number;                ///< "head 31.2 mm"
  std::string sentence;              ///< under it
  bool placed = false;               ///< false: there is no such placement, only words
  Region silhouette;                 ///< of the figure in its place
  Drawing drawing;                   ///< the same as inked
  Region shownIn;                    ///< the border that cuts it; empty: nothing does
  Region above;                      ///< stands above its panel's border, of what is shown
  std::vector<std::size_t> entered;  ///< panels that it covers in part
};

struct FitPicture {
  std::string title, about;
  Sheet sheet;
  std::vector<Polygon> panels;           ///< in painting order
  std::size_t own = 0;                   ///< the figure's panel, index into `panels`
  std::vector<Polygon> faces, balloons;  ///< of the other panels
  std::vector<FitColumn> columns;
};

Result<void> writeFitPng(const std::filesystem::path& file, const FitPicture& picture);
Result<void> writeFitSvg(const std::filesystem::path& file, const FitPicture& picture);

}  // namespace tw
