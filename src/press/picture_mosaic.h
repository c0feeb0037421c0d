// A small picture out of a PNG for any drawing surface: averaged into a few thousand cells, each a
// filled rectangle. Enough to know a face by; never in place of the file itself.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "press/surface.h"

namespace tw {

struct Mosaic {
  int columns = 0, rows = 0;
  std::vector<Ink> cells;  ///< row by row
  double aspect() const { return static_cast<double>(columns) / rows; }
};

/// Nothing when the bytes are no PNG that cairo can read.
std::optional<Mosaic> mosaicOf(const std::string& png, int mostCells = 90);

/// Fills the rectangle, which should have the mosaic's aspect.
void drawMosaic(Surface& surface, const Mosaic& mosaic, const Rect& in);

}  // namespace tw
