// A picture in one channel: how light each pixel is. What squint tests and attention maps read,
// whether it was staged, scanned or painted.
#pragma once

#include <cstddef>
#include <vector>

#include "geometry/shapes.h"

namespace tw {

struct GreyPicture {
  int width = 0, height = 0;
  std::vector<float> light;  ///< row by row, 0 black … 1 paper, as the eye steps (CIE L* / 100)
  Point origin;              ///< top left corner, mm on the page
  double mmPerPx = 1;

  bool empty() const { return light.empty(); }
  float at(int x, int y) const {
    return light[static_cast<std::size_t>(y) * static_cast<std::size_t>(width) +
                 static_cast<std::size_t>(x)];
  }
  /// Middle of a pixel, mm on the page.
  Point onPage(int x, int y) const {
    return {origin.x + (x + 0.5) * mmPerPx, origin.y + (y + 0.5) * mmPerPx};
  }
};

}  // namespace tw
