// What an artist tries first when a pose does not read: one arm up, a wider stance, a twist, a
// turn. Each move is one such change in plain words, made by inverse kinematics or by a joint's
// turn; hands that hold something or touch what stays (a thing pushed, a wall, somebody else), and
// feet that stand, stay where they are.
#pragma once

#include <algorithm>
#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "stage/reach_pose.h"

namespace tw {

/// A figure while its pose is being varied.
struct Stance {
  const Body* body = nullptr;
  Pose pose;                                 ///< with all changes
  SetFigure set;                             ///< its turnsDeg is empty
  bool leftBusy = false, rightBusy = false;  ///< the figure's own hands that hold something
  bool moving = false;                       ///< both feet need not stand
  /// Wrists and ankles on something that does not go along: they stay. Their hands are busy too.
  std::vector<Joint> touching;
  bool touches(Joint joint) const {
    return std::find(touching.begin(), touching.end(), joint) != touching.end();
  }
  Skeleton skeleton() const { return posed(*body, pose, set); }
};

enum class MoveKind : std::uint8_t { LeftArm, RightArm, Legs, Trunk, Turn, Head };

struct PoseMove {
  std::string name;  ///< "right arm raised"
  MoveKind kind;
  /// The stance after the move, or nothing where it cannot be made or would change nothing.
  std::function<std::optional<Stance>(const Stance&)> made;
};

/// Every move, in a fixed order. `sideDeg` = heading that faces the camera, for the flip.
std::vector<PoseMove> poseMoves(const JointLimits& limits, double sideDeg);

}  // namespace tw
