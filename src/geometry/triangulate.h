// Cuts a simple polygon, convex or not, into triangles between its own corners. Nothing is added,
// so the triangles' areas sum to the polygon's.
#pragma once

#include <array>
#include <cstddef>
#include <vector>

#include "geometry/shapes.h"

namespace tw {

/// Triples of indices into `corners`, turning as the polygon turns. Corners that lie on one line
/// or on each other are borne; of a polygon that crosses itself some triangles may overlap, but
/// there are never more than corners − 2. Empty for fewer than three corners.
std::vector<std::array<std::size_t, 3>> triangulated(const std::vector<Point>& corners);

}  // namespace tw
