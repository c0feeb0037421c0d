// Which pixels of a grid a region covers.
#pragma once

#include <cstdint>
#include <vector>

#include "geometry/grey_picture.h"

namespace tw {

/// 255 where the region covers the pixel (even-odd), else 0; row by row on the picture's own grid.
std::vector<std::uint8_t> filledMask(const Region& region, const GreyPicture& grid);

}  // namespace tw
