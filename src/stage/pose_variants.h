// "What if I raise this arm?" Alternatives to the pose of one figure in a staged panel, each named
// in plain words, measured in its own picture, and unlike the others. The camera, the other
// figures and the set stay as they are; what a hand holds goes with the hand.
#pragma once

#include <string>
#include <vector>

#include "stage/pose_figures.h"
#include "stage/staging.h"

namespace tw {

struct PoseVariant {
  std::string name;  ///< "right arm raised, stance wider"; "as it is" for the present pose
  Staging staging;   ///< the panel's, with this figure changed
  PoseFigures figures;
  double readability = 0;
  double unlike = 0;  ///< mean way of its joints in the picture from the nearest kept one / stature
};

struct PoseVariants {
  PoseVariant present;
  std::vector<PoseVariant> kept;  ///< best first
  std::size_t tried = 0;
};

/// Variants of figure `index` of the panel's staging; at most `keep`. Deterministic.
PoseVariants poseVariants(const Stager& stager, const RoughPanel& panel, const Beat& beat,
                          std::size_t index, std::size_t keep);

}  // namespace tw
