// Area with a sign, which tells the way round an outline runs.
#pragma once

#include "geometry/shapes.h"

namespace tw {

/// mm²; positive when the outline runs clockwise on screen (y down).
double turnArea(const Polygon& polygon);

}  // namespace tw
