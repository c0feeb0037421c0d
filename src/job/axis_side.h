// On which side of the line through two places a camera stands, seen from above: the axis of
// action between two figures. Near the line is neither side (facts: staging §7.3).
#pragma once

#include <cmath>

#include "job/set_light.h"

namespace tw {

/// Sign of ((b − a) × (camera − a)) · up: −1 or +1, 0 within 3° of the line.
inline double axisSide(const Place3& a, const Place3& b, const Place3& camera) {
  const double abX = b.x - a.x, abZ = b.z - a.z, acX = camera.x - a.x, acZ = camera.z - a.z;
  const double side = abZ * acX - abX * acZ;
  const double nearLine = 0.05 * std::hypot(abX, abZ) * std::hypot(acX, acZ);
  return std::abs(side) < nearLine ? 0 : side > 0 ? 1 : -1;
}

}  // namespace tw
