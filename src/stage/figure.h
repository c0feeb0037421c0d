// The artist's lay figure: a jointed body in metres, posed by data, with smooth tapered volumes.
// Space: x to the right of the default camera's picture, y up, z away from it. A figure with
// heading 0 stands at the origin and faces the camera (toward −z); its left hand is at +x.
#pragma once

#include <Eigen/Core>
#include <array>
#include <cstdint>
#include <map>
#include <optional>
#include <string>
#include <vector>

#include "base/result.h"
#include "job/beat.h"
#include "job/rough.h"

namespace tw {

using Vec3 = Eigen::Vector3d;

enum class Joint : std::uint8_t {
  Pelvis,
  Waist,
  Chest,
  Neck,
  Head,  // Head = skull base
  LeftHip,
  LeftKnee,
  LeftAnkle,
  LeftToe,
  RightHip,
  RightKnee,
  RightAnkle,
  RightToe,
  LeftShoulder,
  LeftElbow,
  LeftWrist,
  LeftFingertip,
  RightShoulder,
  RightElbow,
  RightWrist,
  RightFingertip,
  Crown,
  Chin,
  Nose,
  Count
};
inline constexpr std::size_t kJoints = static_cast<std::size_t>(Joint::Count);

/// Parts of a figure that are told apart when seen: for visible shares per limb.
enum class BodyPart : std::uint8_t {
  Head,
  Torso,
  LeftArm,
  RightArm,
  LeftHand,
  RightHand,
  LeftLeg,
  RightLeg,
  LeftFoot,
  RightFoot,
  Hair,
  Count
};

/// Segment lengths and breadths in metres; Drillis & Contini 1966 lengths (facts §1.1),
/// ANSUR II sex-specific breadths (facts §1.2).
struct Body {
  double stature = 1.7;
  double headHeight, neck, shoulderToHip, upperArm, forearm, hand, thigh, shank, ankleHeight,
      footLength, footBreadth, shoulderBreadth, chestDepth, waistBreadth, hipBreadth, headBreadth,
      headDepth;
  double heft = 1;  ///< thickness of soft parts, 1 = medium
  Sex sex = Sex::Female;
};
Body bodyOf(const Character& character);

/// Joint rotations in degrees relative to the parent, and how the root stands. As data in
/// presets/poses/*.json, in trade words.
struct Pose {
  std::string name;
  std::string title;                                      ///< "hauls on a line"
  std::map<std::string, std::array<double, 3>> turnsDeg;  ///< joint → flex, aside, twist
  std::array<double, 3> rootTurnDeg{0, 0, 0};             ///< pitch, roll, yaw of the pelvis
  std::string support = "feet";  ///< feet, knees, seat, back, hands, none (in the air)
  std::string line;              ///< line of action: "C", "S", "I", "reversed C"
  double motion = 0;             ///< 0 still … 1 fast; direction is the body's front
  std::string pointer;           ///< joint whose limb leads the eye, or empty
};

class PoseLibrary {
 public:
  static Result<PoseLibrary> load();  ///< presets/poses
  const Pose* find(const std::string& name) const;
  const Pose& orStand(const std::string& name) const;  ///< falls back to "stand"
  std::vector<std::string> names() const;

 private:
  std::map<std::string, Pose> poses_;
};

/// Joint places in the world, and each joint's frame (columns: right, up, front of the part).
struct Skeleton {
  std::array<Vec3, kJoints> at;
  std::array<Eigen::Matrix3d, kJoints> frame;
  const Vec3& operator[](Joint j) const { return at[static_cast<std::size_t>(j)]; }
};
Skeleton posed(const Body& body, const Pose& pose, const SetFigure& set);

/// Triangles with smooth normals. `part` is a BodyPart for figures, 0 for props.
struct Mesh {
  std::vector<Vec3> points;
  std::vector<Vec3> normals;
  std::vector<std::array<std::uint32_t, 3>> triangles;
  std::vector<std::uint8_t> part;  ///< one per triangle
};

/// The body's surface for a posed skeleton: smooth joined volumes as of docs/figures.md.
/// `detail` 1 = final picture; less = coarser for fast measures.
Mesh bodyMesh(const Body& body, const Skeleton& skeleton, double detail = 1);

/// Mass centre of the whole body (Winter's segment masses, facts §1.4).
Vec3 centreOfMass(const Body& body, const Skeleton& skeleton);

}  // namespace tw
