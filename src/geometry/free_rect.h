// The largest axis-parallel rectangle that is left free, for a figure that must stand clear. Exact,
// and meant for the few rectangles of one page.
#pragma once

#include <vector>

#include "geometry/shapes.h"

namespace tw {

/// The rectangle of greatest area inside `space` that overlaps none of `taken`. Empty space gives
/// an empty rectangle. Tries all pairs of edges: O(n⁵) for n rectangles, the panels of a page.
Rect largestFreeRect(const Rect& space, const std::vector<Rect>& taken);

}  // namespace tw
