// A number for each cell of a grid over some rectangle of the page: how much a place draws the
// eye, or how strong it is.
#pragma once

#include <algorithm>
#include <cstddef>
#include <vector>

#include "geometry/shapes.h"

namespace tw {

struct PlaceMap {
  int width = 0, height = 0;  ///< cells
  std::vector<double> value;  ///< row by row
  Rect covers;                ///< mm on the page

  bool empty() const { return value.empty(); }
  std::size_t index(int x, int y) const {
    return static_cast<std::size_t>(y) * static_cast<std::size_t>(width) +
           static_cast<std::size_t>(x);
  }
  double at(int x, int y) const { return value[index(x, y)]; }
  /// Middle of a cell, mm on the page.
  Point onPage(int x, int y) const {
    return {covers.min.x + (x + 0.5) * covers.width() / width,
            covers.min.y + (y + 0.5) * covers.height() / height};
  }
};

}  // namespace tw
