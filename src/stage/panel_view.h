// A rendered picture laid over a frame on the page: what drawPanel's parts share. Pixel places are
// (0, 0) at the picture's top left corner, pixel centres at halves.
#pragma once

#include <algorithm>

#include "stage/picture.h"

namespace tw {

struct PanelView {
  const Picture& picture;
  const Camera& camera;
  Rect frame;  ///< mm on the page

  double mmPerPx() const { return frame.width() / picture.width; }
  Point pageFromPx(Point px) const {
    return {frame.min.x + px.x * mmPerPx(), frame.min.y + px.y * mmPerPx()};
  }
  Point pxFromPage(Point page) const {
    return {(page.x - frame.min.x) / mmPerPx(), (page.y - frame.min.y) / mmPerPx()};
  }
  Point pageFromFrame(Point frameUnits) const {
    return {frame.min.x + frameUnits.x * frame.width(), frame.min.y + frameUnits.y * frame.width()};
  }
  /// Index of the pixel, places outside moved to the nearest edge.
  std::size_t pixelAt(Point px) const {
    const int x = std::clamp(static_cast<int>(std::floor(px.x)), 0, picture.width - 1);
    const int y = std::clamp(static_cast<int>(std::floor(px.y)), 0, picture.height - 1);
    return static_cast<std::size_t>(y) * picture.width + static_cast<std::size_t>(x);
  }
};

}  // namespace tw
