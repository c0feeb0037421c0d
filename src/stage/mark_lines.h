// Marks on a figure: scars, cuts, bandages, torn sleeves and the like, as lines on its surface.
// They belong to the figure's own left or right, so a picture that is laid out the other way round,
// or a pose seen in a looking-glass, leaves them on the side where they are.
#pragma once

#include <vector>

#include "stage/loft.h"
#include "stage/picture.h"

namespace tw {

/// Lines that are hidden by a sleeve or trouser leg are left out.
std::vector<GarmentLine> markLines(const Body& body, const Skeleton& skeleton);

struct SurfacePlace {
  Vec3 at, out;
};
/// A place on rings: share along them, angle round them (0 front, 90 the figure's left).
SurfacePlace placeOn(const std::vector<Ring>& rings, double along, double angleDeg);

}  // namespace tw
