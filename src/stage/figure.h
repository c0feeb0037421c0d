// The artist's lay figure: a jointed body in metres, posed by data, with smooth tapered volumes.
// Space: x to the right of the default camera's picture, y up, z away from it. A figure with
// heading 0 stands at the origin and faces the camera (toward −z); its left hand is at +x.
// Headings, gazes and all "to the left" are the figure's own left: heading 90 faces +x.
// Keeps true: posing never changes a length; a mirrored pose is the picture in a looking-glass.
#pragma once

#include <Eigen/Core>
#include <array>
#include <cstdint>
#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "base/result.h"
#include "job/beat.h"
#include "job/rough.h"
#include "stage/look.h"

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
  Neck,
  LeftForearm,
  RightForearm,
  LeftShank,
  RightShank,
  Skirt,  ///< of a coat too
  Hips,   ///< the trunk below the belt
  Hat,
  Scarf,
  Count
};

/// Segment lengths and breadths in metres; Drillis & Contini 1966 lengths, ANSUR II sex-specific
/// breadths. Children and heroic figures have other head counts; the rest scales with them.
struct Body {
  double stature = 1.7;
  double headHeight = 0, neck = 0, shoulderToHip = 0, upperArm = 0, forearm = 0, hand = 0,
         thigh = 0, shank = 0, ankleHeight = 0, footLength = 0;
  double footBreadth = 0, shoulderBreadth = 0, chestBreadth = 0, chestDepth = 0, waistBreadth = 0,
         hipBreadth = 0, headBreadth = 0, headDepth = 0;  ///< shoulderBreadth is biacromial
  double heft = 1;                                        ///< thickness of soft parts, 1 = medium
  double muscle = 1;                                      ///< swell of limbs, 1 = medium
  double stoopDeg = 0;  ///< bend of the back that age has left, in every pose
  Sex sex = Sex::Female;
  Look look;  ///< bare unless the wardrobe dresses it
};
Body bodyOf(const Character& character);

/// Shapes of a hand, chosen by the pose.
enum class HandShape : std::uint8_t { Relaxed, Open, Flat, Fist, Grip, Point, Cup };
std::optional<HandShape> handShapeNamed(std::string_view name);

/// The joint of that name in trade words: "left wrist", "neck", …
std::optional<Joint> jointNamed(std::string_view name);
std::string_view nameOf(Joint joint);
/// Left and right exchanged; joints of the middle stay.
Joint mirrored(Joint joint);

/// Joint rotations in degrees relative to the parent, and how the root stands. As data in
/// presets/poses/*.json, in trade words. All zero: upright, arms hanging, thumbs forward.
///
/// Keys of `turnsDeg`: waist, chest, neck, head, and left/right girdle, shoulder, elbow, wrist,
/// hip, knee, ankle, toes. The three numbers of a joint, applied twist first, flex last:
/// - waist, chest, neck, head: flex bends forward, aside leans to the figure's left, twist turns
///   to the figure's left.
/// - shoulder, hip: flex swings the limb forward in the walking plane, aside takes it out of that
///   plane away from the body, twist turns it outward about its own axis. An arm straight up is
///   flex 180; straight sideways is aside 90.
/// - elbow, knee: flex bends (forearm forward, heel to seat); the elbow's twist turns the forearm
///   outward (palm to the front = +90, palm to the back = −90).
/// - wrist: flex toward the palm, aside toward the thumb.
/// - ankle, toes: flex lifts the toes, aside turns the sole outward, twist the toes outward.
/// - girdle: flex brings the shoulder forward, aside lifts it; added to what follows the arm.
struct Pose {
  std::string name;
  std::string title;                                      ///< "hauls on a line"
  std::map<std::string, std::array<double, 3>> turnsDeg;  ///< joint → flex, aside, twist
  std::array<double, 3> rootTurnDeg{0, 0, 0};  ///< pelvis: pitch forward, roll and yaw to its left
  std::string support = "feet";  ///< feet, knees, seat, back, hands, none (in the air)
  std::string line;              ///< line of action: "C", "S", "I", "reversed C"
  double motion = 0;             ///< 0 still … 1 fast; direction is the body's front
  std::string pointer;           ///< joint whose limb leads the eye ("left wrist"), or empty
  HandShape leftHand = HandShape::Relaxed, rightHand = HandShape::Relaxed;
  double lift = 0;      ///< lowest point above the ground / stature, for support "none"
  double seat = 0;      ///< height of the block or chair sat on / stature; 0 = none needed
  double jawDeg = 0;    ///< how far the mouth stands open
  double viewDeg = 30;  ///< heading before the camera in which the pose reads best
  std::string held;     ///< what keeps a pose up that would fall over: "by the wall behind"
};

/// One hand of a pose for two and what it takes hold of.
struct HandHold {
  bool firsts = true;  ///< the hand of the first figure, else of the second
  bool left = true;
  Joint on = Joint::Chest;  ///< of the other figure, or of the same when `own`
  bool own = false;
  /// From that joint in its frame, shares of that figure's stature: to its left, up, front.
  Vec3 off = Vec3::Zero();
  bool palm = false;  ///< `on` is a wrist whose palm is met; both hands go half the way
};

/// A pose for two: a figure's each, how the second stands to the first, and whose hands are on
/// whom. As data in presets/pairs/*.json. The poses are found in the library as "NAME:ROLE".
struct PairPose {
  std::string name, title;
  std::array<std::string, 2> roles;
  std::array<Pose, 2> poses;
  std::vector<std::string> relations;     ///< words of a beat's relation that ask for it
  std::vector<std::string> phrases;       ///< words of a description that ask for it
  double leastShare = 0, mostShare = 10;  ///< of the second's stature over the first's
  /// The second's joint `placed` comes to stand at the first's joint `by`, moved by `off` (shares
  /// of the first's stature in its heading: left, up, front). On the ground only sideways.
  Joint placed = Joint::Pelvis, by = Joint::Pelvis;
  Vec3 off = Vec3::Zero();
  double turnDeg = 180;  ///< the second's heading from the first's
  bool lifted = false;   ///< the second is off the ground
  double viewDeg = 30;   ///< the first's heading in which the pair reads best
  std::vector<HandHold> holds;
};
/// The pose with the turns that the artist changed put in their place; names that are no joint
/// change nothing.
Pose withTurns(const Pose& pose, const std::map<std::string, std::array<double, 3>>& turnsDeg);
/// What withTurns needs to make `to` of `from`: joints that differ by more than 0.001°.
std::map<std::string, std::array<double, 3>> turnsThatDiffer(const Pose& from, const Pose& to);
/// The same pose with left and right exchanged (as SetFigure::poseMirrored does).
Pose mirrored(const Pose& pose);

/// After a pose's name: the same with left and right exchanged, whichever way the picture runs.
inline constexpr std::string_view kMirroredSuffix = ":mirrored";

class PoseLibrary {
 public:
  /// presets/poses and presets/pairs; every problem of every file at once. Each pose for one is
  /// there a second time, mirrored.
  static Result<PoseLibrary> load();
  const Pose* find(const std::string& name) const;
  const Pose& orStand(const std::string& name) const;  ///< falls back to "stand"
  std::vector<std::string> names() const;              ///< of the poses for one
  const std::vector<PairPose>& pairs() const { return pairs_; }

 private:
  std::map<std::string, Pose> poses_;  ///< a pair's as "NAME:ROLE"
  std::vector<PairPose> pairs_;        ///< by name
};

/// Joint places in the world, and each joint's frame (columns: right, up, front of the part).
struct Skeleton {
  std::array<Vec3, kJoints> at;
  std::array<Eigen::Matrix3d, kJoints> frame;
  const Vec3& operator[](Joint j) const { return at[static_cast<std::size_t>(j)]; }
  const Eigen::Matrix3d& frameOf(Joint j) const { return frame[static_cast<std::size_t>(j)]; }
  HandShape leftHand = HandShape::Relaxed, rightHand = HandShape::Relaxed;
  double jawDeg = 0;
};
/// The turns changed in `set` count in place of the pose's. Toe = ball of the foot, where the toes
/// bend. A wrist's front is the palm. The root is set so that the lowest part of the body touches
/// the ground at `set.at`, unless the pose is in the air.
Skeleton posed(const Body& body, const Pose& pose, const SetFigure& set);

/// Triangles with smooth normals. `part` is a BodyPart for figures, 0 for props. Corners a, b, c
/// are wound so that (b − a) × (c − a) points outward; so does each normal.
struct Mesh {
  std::vector<Vec3> points;
  std::vector<Vec3> normals;
  std::vector<std::array<std::uint32_t, 3>> triangles;
  std::vector<std::uint8_t> part;  ///< one per triangle
};

/// The body's surface for a posed skeleton: closed tapered volumes that run into each other, so a
/// change of part without a step in depth is no contour.
/// `detail` 1 = final picture; less = coarser for fast measures.
Mesh bodyMesh(const Body& body, const Skeleton& skeleton, double detail = 1);

/// Mass centre of the whole body (Winter's segment masses, facts §1.4).
Vec3 centreOfMass(const Body& body, const Skeleton& skeleton);

}  // namespace tw
