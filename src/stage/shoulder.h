// Where the shoulder joint lies once the collar bone has followed the arm. Apart from the skeleton
// because whoever solves for a pose has to know how far a turned arm takes its shoulder along.
#pragma once

#include "stage/figure.h"

namespace tw {

/// `chest` and `arm` are the frames of rib cage and upper arm, `girdle` the turn of the pose.
Vec3 shoulderPlace(const Body& body, const Vec3& chestAt, const Eigen::Matrix3d& chest,
                   const Eigen::Matrix3d& arm, const std::array<double, 3>& girdle, bool left);

}  // namespace tw
