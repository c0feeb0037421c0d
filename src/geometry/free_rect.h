// The largest axis-parallel rectangle that is left free, for a figure that must stand clear.
#pragma once

#include <vector>

#include "geometry/shapes.h"

namespace tw {

/// The rectangle of greatest area inside `space` that overlaps none of `taken`. Empty space gives
/// an empty rectangle. Tries all edges: O(n⁴·n) for n rectangles; n is a page's panels.
Rect largestFreeRect(const Rect& space, const std::vector<Rect>& taken);

}  // namespace tw
