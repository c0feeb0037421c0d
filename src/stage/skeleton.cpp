// Forward kinematics: from a body and a pose to joint places and frames.
//
// Every frame has the columns right, up, front of its part; they are a rotation (right × up =
// front as numbers). Steps: 1. root frame from heading and the pose's own turn; 2. spine upward
// pelvis → waist → chest → neck → head; 3. arms: the girdle lifts and advances with the upper arm
// (about a quarter of its elevation past 40°, after the scapulohumeral rhythm of Inman et al.
// 1944, from memory; the arm's direction stays as posed); 4. legs; 5. the whole figure is lifted
// or lowered until its lowest part touches the ground.
// It does not keep both feet on the ground by itself: poses are data that already do.
#include <algorithm>
#include <cmath>
#include <numbers>

#include "stage/figure.h"
#include "stage/figure_proportions.h"
#include "stage/shoulder.h"

namespace tw {
namespace {

using Mat3 = Eigen::Matrix3d;
using Turn = std::array<double, 3>;

constexpr double kRad = std::numbers::pi / 180;
// A stoop bends the upper back most; the neck rises again so that the eyes look ahead. Common
// practice, no source.
constexpr double kStoopWaist = 0.3, kStoopChest = 0.7, kStoopNeck = -0.45;
constexpr double kUpperArmShare = 0.186;  // Drillis & Contini: scales flesh to the limbs' stature

Mat3 aboutRight(double deg) {
  const double c = std::cos(deg * kRad), s = std::sin(deg * kRad);
  return (Mat3() << 1, 0, 0, 0, c, -s, 0, s, c).finished();
}
Mat3 aboutUp(double deg) {
  const double c = std::cos(deg * kRad), s = std::sin(deg * kRad);
  return (Mat3() << c, 0, s, 0, 1, 0, -s, 0, c).finished();
}
Mat3 aboutFront(double deg) {
  const double c = std::cos(deg * kRad), s = std::sin(deg * kRad);
  return (Mat3() << c, -s, 0, s, c, 0, 0, 0, 1).finished();
}

Mat3 trunkTurn(const Turn& t) {
  return aboutRight(t[0]) * aboutFront(t[1]) * aboutUp(-t[2]);
}
/// `side` is −1 for the left limb, +1 for the right: the sign of its outward direction along right.
/// `bend` is +1 for a knee, which closes backward, and −1 for all that swing forward.
Mat3 limbTurn(const Turn& t, double side, double bend = -1) {
  return aboutRight(bend * t[0]) * aboutFront(side * t[1]) * aboutUp(side * t[2]);
}

/// Looks up a turn by side and joint without making strings on the heap.
class Turns {
 public:
  Turns(const Pose& pose, bool mirror) : pose_(pose), mirror_(mirror) {}

  Turn trunk(const std::string& joint) const {
    const auto found = pose_.turnsDeg.find(joint);
    if (found == pose_.turnsDeg.end()) return {0, 0, 0};
    Turn t = found->second;
    if (mirror_) t = {t[0], -t[1], -t[2]};
    return t;
  }
  Turn limb(bool left, const char* joint) const {
    const auto found =
        pose_.turnsDeg.find(std::string(left != mirror_ ? "left " : "right ") + joint);
    return found == pose_.turnsDeg.end() ? Turn{0, 0, 0} : found->second;
  }
  Turn root() const {
    const Turn& t = pose_.rootTurnDeg;
    return mirror_ ? Turn{t[0], -t[1], -t[2]} : t;
  }

 private:
  const Pose& pose_;
  bool mirror_;
};

class Poser {
 public:
  Poser(const Body& body, const Pose& pose, const SetFigure& set)
      : body_(body), pose_(pose), set_(set), turns_(pose, set.poseMirrored) {}

  Skeleton run() {
    placeSpine();
    for (const bool left : {true, false}) {
      placeArm(left);
      placeLeg(left);
    }
    setOnGround();
    skeleton_.leftHand = set_.poseMirrored ? pose_.rightHand : pose_.leftHand;
    skeleton_.rightHand = set_.poseMirrored ? pose_.leftHand : pose_.rightHand;
    skeleton_.jawDeg = pose_.jawDeg;
    return skeleton_;
  }

 private:
  const Mat3& put(Joint joint, const Vec3& at, const Mat3& frame) {
    const auto i = static_cast<std::size_t>(joint);
    skeleton_.at[i] = at;
    skeleton_.frame[i] = frame;
    return skeleton_.frame[i];
  }

  /// The pose's turn with the share of the body's stoop that falls on that joint.
  Turn bent(const char* joint, double share) const {
    Turn turn = turns_.trunk(joint);
    turn[0] += share * body_.stoopDeg;
    return turn;
  }

  void placeSpine() {
    const Turn root = turns_.root();
    const Mat3 facing = Eigen::DiagonalMatrix<double, 3>(-1, 1, -1) * aboutUp(-set_.headingDeg);
    const Mat3 pelvis = facing * aboutUp(-root[2]) * aboutRight(root[0]) * aboutFront(root[1]);
    const double trunk = body_.shoulderToHip;
    put(Joint::Pelvis, Vec3(0, 0, 0), pelvis);
    Vec3 at = pelvis * Vec3(0, kWaistUp * trunk, 0);
    const Mat3 waist = put(Joint::Waist, at, pelvis * trunkTurn(bent("waist", kStoopWaist)));
    at += waist * Vec3(0, (kChestUp - kWaistUp) * trunk, -kChestBack * body_.chestDepth);
    const Mat3 chest = put(Joint::Chest, at, waist * trunkTurn(bent("chest", kStoopChest)));
    at +=
        chest * Vec3(0, (kNeckUp - kChestUp) * trunk, (kChestBack - kNeckBack) * body_.chestDepth);
    placeHead(at, chest);
  }

  void placeHead(Vec3 at, const Mat3& chest) {
    Turn neckTurn = bent("neck", kStoopNeck), headTurn = turns_.trunk("head");
    neckTurn[2] += 0.4 * set_.gazeDeg;
    headTurn[2] += 0.6 * set_.gazeDeg;
    const Mat3 neck = put(Joint::Neck, at, chest * trunkTurn(neckTurn));
    const double rise =
        body_.neck + kHeadUp * body_.headHeight - (kNeckUp - 1) * body_.shoulderToHip;
    at += neck * Vec3(0, rise, kNeckBack * body_.chestDepth);
    const Mat3 head = put(Joint::Head, at, neck * trunkTurn(headTurn));
    const double height = body_.headHeight, depth = body_.headDepth;
    const Vec3 jaw = head * Vec3(0, -kHeadUp * height, kChinFront * depth);
    put(Joint::Chin, at + jaw, head);
    put(Joint::Nose, at + head * Vec3(0, (kNoseUp - kHeadUp) * height, kNoseFront * depth), head);
    put(Joint::Crown, at + head * Vec3(0, (1 - kHeadUp) * height, -kCrownBack * depth), head);
  }

  void placeArm(bool left) {
    const double side = left ? -1 : 1;
    const Mat3 upper =
        skeleton_.frameOf(Joint::Chest) * limbTurn(turns_.limb(left, "shoulder"), side);
    Vec3 at = shoulderPlace(body_, skeleton_[Joint::Chest], skeleton_.frameOf(Joint::Chest), upper,
                            turns_.limb(left, "girdle"), left);
    put(left ? Joint::LeftShoulder : Joint::RightShoulder, at, upper);
    at += upper * Vec3(0, -body_.upperArm, 0);
    const Turn elbow = turns_.limb(left, "elbow");
    const Mat3 fore = put(left ? Joint::LeftElbow : Joint::RightElbow, at,
                          upper * limbTurn({elbow[0], elbow[1], 0}, side));
    at += fore * Vec3(0, -body_.forearm, 0);
    const Mat3 palm = fore * aboutUp(side * (elbow[2] - 90));  // front = palm
    const Mat3 hand = put(left ? Joint::LeftWrist : Joint::RightWrist, at,
                          palm * limbTurn(turns_.limb(left, "wrist"), side));
    put(left ? Joint::LeftFingertip : Joint::RightFingertip, at + hand * Vec3(0, -body_.hand, 0),
        hand);
  }

  void placeLeg(bool left) {
    const double side = left ? -1 : 1;
    const Mat3& pelvis = skeleton_.frameOf(Joint::Pelvis);
    Vec3 at = pelvis * Vec3(side * kHipApart * body_.hipBreadth, 0, 0);
    const Mat3 thigh = put(left ? Joint::LeftHip : Joint::RightHip, at,
                           pelvis * limbTurn(turns_.limb(left, "hip"), side));
    at += thigh * Vec3(0, -body_.thigh, 0);
    const Mat3 shank = put(left ? Joint::LeftKnee : Joint::RightKnee, at,
                           thigh * limbTurn(turns_.limb(left, "knee"), side, 1));
    at += shank * Vec3(0, -body_.shank, 0);
    const Mat3 foot = put(left ? Joint::LeftAnkle : Joint::RightAnkle, at,
                          shank * limbTurn(turns_.limb(left, "ankle"), side));
    const Vec3 ball(0, -(1 - kBallUp) * body_.ankleHeight, kBallForward * body_.footLength);
    put(left ? Joint::LeftToe : Joint::RightToe, at + foot * ball,
        foot * limbTurn(turns_.limb(left, "toes"), side));
  }

  double lowestOfFoot(Joint ankle, Joint toe) const {
    const Mat3& foot = skeleton_.frameOf(ankle);
    const Vec3 heel =
        skeleton_[ankle] + foot * Vec3(0, -body_.ankleHeight, -kHeelBack * body_.footLength);
    const Vec3 ball = skeleton_[toe] + foot * Vec3(0, -kBallUp * body_.ankleHeight, 0);
    const Vec3 tip = skeleton_[toe] + skeleton_.frameOf(toe) * Vec3(0, -kBallUp * body_.ankleHeight,
                                                                    kToesLong * body_.footLength);
    return std::min({heel.y(), ball.y(), tip.y()});
  }

  /// Of an egg in a frame: its lowest height, metres.
  double lowestOfEgg(Joint joint, const Vec3& at, const Vec3& radii) const {
    const Mat3& frame = skeleton_.frameOf(joint);
    const Vec3 down = frame.row(1).transpose().cwiseProduct(radii);
    return (skeleton_[joint] + frame * at).y() - down.norm();
  }

  double lowestOfTrunk() const {
    const double u = body_.upperArm / kUpperArmShare * (0.6 + 0.4 * body_.heft);
    const double full = body_.sex == Sex::Female ? kSeatHers : kSeatHis;
    const Vec3 seat = Vec3(kSeatAcross, kSeatHigh, kSeatDeep) * u * full;
    const double apart = kSeatApart * body_.hipBreadth;
    const Vec3 ribs(0.52 * body_.chestBreadth, 0.30 * body_.shoulderToHip, 0.51 * body_.chestDepth);
    const Vec3 ribsAt(0, 0.24 * body_.shoulderToHip, 0);
    return std::min({lowestOfEgg(Joint::Pelvis, Vec3(apart, kSeatUp * u, kSeatBack * u), seat),
                     lowestOfEgg(Joint::Pelvis, Vec3(-apart, kSeatUp * u, kSeatBack * u), seat),
                     lowestOfEgg(Joint::Chest, ribsAt, ribs)});
  }

  double lowestOfHead() const {
    const double height = body_.headHeight, depth = body_.headDepth;
    return lowestOfEgg(Joint::Head, Vec3(0, (0.52 - kHeadUp) * height, -0.03 * depth),
                       Vec3(0.5 * body_.headBreadth, 0.52 * height, 0.52 * depth));
  }

  double lowestOfLimbs(bool left) const {
    const double u = body_.upperArm / kUpperArmShare * (0.4 + 0.6 * body_.heft);
    const auto at = [&](Joint l, Joint r, double flesh) {
      return skeleton_[left ? l : r].y() - flesh * u;
    };
    return std::min({at(Joint::LeftKnee, Joint::RightKnee, 0.031),
                     at(Joint::LeftHip, Joint::RightHip, 0.050),
                     at(Joint::LeftShoulder, Joint::RightShoulder, 0.037),
                     at(Joint::LeftElbow, Joint::RightElbow, 0.024),
                     at(Joint::LeftWrist, Joint::RightWrist, 0.012),
                     at(Joint::LeftFingertip, Joint::RightFingertip, 0.004)});
  }

  double lowest() const {
    return std::min({lowestOfFoot(Joint::LeftAnkle, Joint::LeftToe),
                     lowestOfFoot(Joint::RightAnkle, Joint::RightToe), lowestOfLimbs(true),
                     lowestOfLimbs(false), lowestOfTrunk(), lowestOfHead()});
  }

  void setOnGround() {
    const double clear = pose_.support == "none" ? pose_.lift * body_.stature : 0;
    const Vec3 by(set_.at.x, set_.at.y + clear - lowest(), set_.at.z);
    for (Vec3& at : skeleton_.at) at += by;
  }

  const Body& body_;
  const Pose& pose_;
  const SetFigure& set_;
  Turns turns_;
  Skeleton skeleton_{};
};

}  // namespace

Vec3 shoulderPlace(const Body& body, const Vec3& chestAt, const Mat3& chest, const Mat3& arm,
                   const Turn& girdle, bool left) {
  const double side = left ? -1 : 1;
  const Vec3 along = chest.transpose() * arm * Vec3(0, -1, 0);
  const double elevation = std::acos(std::clamp(-along.y(), -1.0, 1.0)) / kRad;
  const double lift = girdle[1] + std::clamp((elevation - 40) * 0.24, 0.0, 32.0);
  const double across = -side * along.x();  // > 0 when the arm crosses the body
  const double forward =
      girdle[0] + std::clamp(14 * along.z() + 10 * std::max(across, 0.0), -16.0, 24.0);
  const double up = (1 - kChestUp) * body.shoulderToHip;
  const double inner = kCollarApart * body.shoulderBreadth;
  const Vec3 pivot(side * inner, up, kChestBack * body.chestDepth);
  const Vec3 bone(side * (kShoulderApart * body.shoulderBreadth - inner), 0, 0);
  const Mat3 follow = aboutFront(side * lift) * aboutUp(-side * forward);
  return chestAt + chest * (pivot + follow * bone);
}

Skeleton posed(const Body& body, const Pose& pose, const SetFigure& set) {
  if (set.turnsDeg.empty()) return Poser(body, pose, set).run();
  const Pose changed = withTurns(pose, set.turnsDeg);
  return Poser(body, changed, set).run();
}

}  // namespace tw
