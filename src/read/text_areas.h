// Where a drawn panel seems to hold copy: light, even, compact areas that stand out from their
// ground, with small dark marks in them or none (balloons that are lettered later). A proposal
// that the artist's own marks replace.
#pragma once

#include <vector>

#include "read/panel_picture.h"

namespace tw {

struct TextArea {
  Rect box;         ///< mm on the page
  Polygon outline;  ///< mm on the page
  double sure = 0;  ///< 0 … 1, how much it is like a balloon or a caption
  int marks = 0;    ///< small dark marks in it
};

/// The surest first; their boxes overlap little.
std::vector<TextArea> textAreas(const PanelPicture& panel);

}  // namespace tw
