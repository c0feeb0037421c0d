// A head turned to a place by the neck alone, within its limits: the turn is stored as the figure's
// gaze, the nod as turns of neck and head. The rest of the body stays exactly where it is.
#pragma once

#include "stage/figure.h"
#include "stage/joint_limits.h"

namespace tw {

struct TurnedHead {
  Pose pose;          ///< in its own left and right
  SetFigure set;      ///< with the new gaze; its turnsDeg is empty
  double offDeg = 0;  ///< between where the face looks and the place
};

TurnedHead headTurnedTo(const Body& body, const Pose& named, const SetFigure& set,
                        const Vec3& place, const JointLimits& limits);

}  // namespace tw
