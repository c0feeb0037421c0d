// Takes the stairs of pixels out of an outline that was traced from a picture.
#pragma once

#include "geometry/shapes.h"

namespace tw {

/// The outline walked in small steps, each place the mean of those within `reachMm` along it. What
/// is finer than the reach goes; sharp corners are rounded by about half of it. An outline shorter
/// than six reaches stays as it is.
Polygon calmOutline(const Polygon& outline, double reachMm);

}  // namespace tw
