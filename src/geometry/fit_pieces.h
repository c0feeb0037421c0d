// Cuts outlines into convex pieces, and finds what of a region's hull the region leaves out: its
// pockets and holes. For fits in regions that are not convex.
#pragma once

#include <vector>

#include "geometry/shapes.h"
#include "geometry/turn_area.h"

namespace tw {

/// Convex polygons that together are the outline's inside; all of positive turn. The outline must
/// not cross itself. Where it does the pieces may cover too much, never too little of its hull.
std::vector<Polygon> convexPieces(const Polygon& outline);

/// An outline of a region with the holes in it.
struct Holed {
  Polygon outer;
  std::vector<Polygon> holes;
};
std::vector<Holed> holedOutlines(const Region& region);

/// What the outline leaves of its hull: the chains between neighbouring corners of the hull.
std::vector<Polygon> pocketsOf(const Polygon& outer, const Polygon& hull);

/// Grown by that much; outer corners are bevelled at that distance, so at a square corner up to
/// 8 % more is added. Holes of what has grown are filled.
Region grownBevelled(const std::vector<Polygon>& shapes, double by);

}  // namespace tw
