// Convex outlines cut by straight lines, without the booleans' grid: exact, and cheap enough for
// every step of a search.
#pragma once

#include "geometry/shapes.h"

namespace tw {

/// The part of a convex polygon where (p − on)·normal ≤ 0. Points nearer than 1/1000 mm are one.
Polygon clipped(const Polygon& polygon, Point on, Vector normal);

/// The part inside the rectangle; no points when there is none.
Polygon clipped(const Polygon& polygon, const Rect& rect);

}  // namespace tw
