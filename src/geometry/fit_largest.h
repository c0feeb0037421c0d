// How large a figure can be in a region: the largest scale at which all of its outlines lie inside,
// where to put it then, and whether turning it about (left for right) helps. Nothing is rotated.
// Touching the region's outline is inside. Exact for convex regions and, unless the search is cut
// short, for all others; the answer says which.
#pragma once

#include <optional>
#include <vector>

#include "geometry/shapes.h"

namespace tw {

/// A straight border: the places p with normal · p = at; `normal` has unit length, points outward.
struct Side {
  Vector normal;
  double at = 0;
};

struct FitQuestion {
  /// May overlap and be concave; none may cross itself. Holes in it count as filled.
  std::vector<Polygon> figure;
  Region region;      ///< outlines that do not cross; inside by the even-odd rule
  double margin = 0;  ///< least distance to the region's outline, mm
  bool mayMirror = false;
  /// The figure must reach this side of the region's hull, and keeps no margin there: for figures
  /// that the panel's border cuts.
  std::optional<Side> flush = {};
  int mostSteps = 4000;  ///< of the search in regions that are not convex
};

/// A point p of the figure comes to stand at p · scale + move, its x negated before if mirrored.
struct Fit {
  double scale = 0;  ///< 0: it fits at no scale
  Vector move;
  bool mirrored = false;
  double within = 0;  ///< the true largest scale is at most scale · (1 + within); 0 = exact

  Point placed(Point p) const {
    return {(mirrored ? -p.x : p.x) * scale + move.x, p.y * scale + move.y};
  }
  Polygon placed(const Polygon& polygon) const;
};

Fit largestFit(const FitQuestion& question);

}  // namespace tw
