// Inverse kinematics: takes hands, feet, the head, the pelvis or the gaze to places in the world
// and bends the rest of the figure as little as that needs. Pins stay, joints keep their limits
// (limits of joint_limits.h with their grace; an authored pose that is beyond may stay there).
// It always answers: what cannot be reached is stretched toward, and says how far short.
#pragma once

#include <string>
#include <vector>

#include "stage/figure.h"
#include "stage/joint_limits.h"

namespace tw {

enum class MovedPart : std::uint8_t {
  LeftHand,  ///< the palm's middle
  RightHand,
  LeftFoot,  ///< the sole's middle
  RightFoot,
  Head,    ///< the skull's middle
  Pelvis,  ///< between the hips
  Gaze     ///< what the face turns to
};
std::string_view nameOf(MovedPart part);
MovedPart mirrored(MovedPart part);
/// Where that part is now; for the gaze a place a metre before the face.
Vec3 placeOf(MovedPart part, const Body& body, const Skeleton& skeleton);

struct ReachTarget {
  MovedPart part;
  Vec3 to;  ///< world, metres
};

struct ReachWish {
  std::vector<ReachTarget> targets;
  /// Joints that must stay. A wrist holds its palm, an ankle its whole sole.
  std::vector<Joint> pins;
  /// What touches the floor and is not moved itself stays too.
  bool keepSupport = true;
};

struct Reached {
  MovedPart part;
  double shortM = 0;  ///< from the target; of the gaze: off it, a metre before the face
};

struct ReachedPose {
  Pose pose;      ///< in the given pose's own left and right
  SetFigure set;  ///< the given one, its place moved with the hips
  std::vector<Reached> reached;
  double pinsMovedM = 0;
  std::vector<std::string> limits;  ///< joints beyond their published limit, within the grace
  int evaluations = 0;
  /// "left hand 12 cm short", or empty when all is reached.
  std::string shortfall() const;
};

/// `set.turnsDeg` is taken into the pose first and is empty in the answer.
ReachedPose reachPose(const Body& body, const Pose& pose, const SetFigure& set,
                      const ReachWish& wish, const JointLimits& limits);

}  // namespace tw
