// Joints between the stones of a tower, as an artist hints at them: level lines that break off, a
// few upright ones, more at the edges than in the middle.
#pragma once

#include <array>
#include <vector>

#include "stage/picture.h"

namespace tw {

/// Lines on a towerMesh of that size, set down and turned as placed() does. `metresPerWidth`: what
/// the frame's width spans at the tower; it keeps the courses apart on the page.
std::vector<GarmentLine> stoneCourses(const std::array<double, 3>& sizeM, bool broken,
                                      const Place3& at, double headingDeg, double metresPerWidth);

}  // namespace tw
