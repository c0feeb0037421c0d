// How lines become ink: a width for every point of a line, heavier near, on the shadow side and
// on the focus, thin toward free ends, with a gap where it goes behind something.
#pragma once

#include <optional>

#include "geometry/drawing.h"
#include "stage/visible_lines.h"

namespace tw {

struct Pen {
  double baseMm = 0.35;    ///< width of an ordinary contour
  double weight = 1;       ///< of this thing: focus more, set less
  double darkness = 1;     ///< 0 paper … 1 black
  Vector towardLight;      ///< on the page, length ≤ 1
  double middleDepth = 4;  ///< m; nearer is heavier, farther lighter
};

/// The line as ink; nothing when it is too short to be worth a stroke.
std::optional<Stroke> inked(const SeenLine& line, const Pen& pen);

/// A plain line of marks, set lines and the like: even width, thin at both ends.
Stroke drawnLine(const std::vector<Point>& points, double widthMm, double darkness = 1,
                 double taperMm = 1.5);

}  // namespace tw
