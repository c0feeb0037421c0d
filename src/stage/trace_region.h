// Outlines of the set pixels of a mask, as closed polygons in pixel units. Outer outlines run
// clockwise on screen, holes the other way; by the even-odd rule both are a Region.
#pragma once

#include <cstdint>
#include <vector>

#include "geometry/shapes.h"

namespace tw {

/// `mask` row by row, non-zero = inside. Loops smaller than `leastPixels` are dropped; the rest
/// are simplified to `tolerance` pixels.
Region traced(const std::vector<std::uint8_t>& mask, int width, int height, double leastPixels = 8,
              double tolerance = 0.8);

}  // namespace tw
