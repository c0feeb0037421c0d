// Places where a dragged border likes to rest: the live area, the trim, the bleed, the lines of
// other borders; and, for a gutter that is turned, the straight. Within the tolerance the offset is
// changed so that the border lands there; which lines it landed on is given back to be shown.
#pragma once

#include <vector>

#include "arrange/edit_limits.h"

namespace tw {

enum class SnapTo { Live, Trim, Bleed, Border, Straight };

struct SnapLine {
  SnapTo to = SnapTo::Live;
  Point from, till;  ///< mm; as long as what it belongs to
};

struct Snapped {
  Vector offset;
  std::vector<SnapLine> lines;
};

struct SnapPaper {
  Rect live, trim, bleed;
};

/// The offset for borders that are shifted by it, drawn to the nearest resting place of any border
/// that stands straight; each of x and y by itself, and only where `free` is not 0. `moving` are
/// not snapped to.
Snapped snapped(const std::vector<EditPanel>& panels, const std::vector<PanelSide>& moving,
                Vector offset, Vector free, const SnapPaper& paper, double toleranceMm);

}  // namespace tw
