// Arms and legs: a tapered form per bone, rounded at the joint as wide as the joint.
#include <algorithm>
#include <cmath>
#include <numbers>

#include "stage/body_parts.h"
#include "stage/figure_proportions.h"

namespace tw {
namespace {

using Mat3 = Eigen::Matrix3d;

/// Where along the bone (0 near joint … 1 far joint), and how thick there.
struct Swell {
  double along;
  Girth girth;
};

// Shares of stature at medium build, drawn by eye.
constexpr Swell kUpperArm[] = {
    {0.00, {0.037, 0.034, 0.038, 0.038}}, {0.16, {0.040, 0.033, 0.041, 0.039}},
    {0.38, {0.032, 0.030, 0.036, 0.036}}, {0.58, {0.027, 0.029, 0.038, 0.035}},
    {0.82, {0.025, 0.026, 0.029, 0.029}}, {1.00, {0.026, 0.026, 0.025, 0.025}}};
constexpr Swell kForearm[] = {{0.00, {0.026, 0.026, 0.025, 0.025}},
                              {0.20, {0.031, 0.029, 0.030, 0.027}},
                              {0.45, {0.027, 0.026, 0.027, 0.025}},
                              {0.75, {0.021, 0.020, 0.019, 0.019}},
                              {1.00, {0.018, 0.018, 0.013, 0.013}}};
constexpr Swell kThigh[] = {
    {0.00, {0.047, 0.046, 0.050, 0.058}}, {0.14, {0.052, 0.048, 0.057, 0.060}},
    {0.36, {0.050, 0.045, 0.060, 0.051}}, {0.62, {0.041, 0.037, 0.051, 0.042}},
    {0.85, {0.030, 0.033, 0.036, 0.034}}, {1.00, {0.029, 0.031, 0.031, 0.031}}};
constexpr Swell kShank[] = {
    {0.00, {0.029, 0.031, 0.031, 0.031}}, {0.11, {0.029, 0.028, 0.030, 0.035}},
    {0.28, {0.036, 0.031, 0.027, 0.047}}, {0.46, {0.030, 0.031, 0.024, 0.041}},
    {0.76, {0.018, 0.017, 0.019, 0.023}}, {1.00, {0.017, 0.019, 0.018, 0.020}}};

/// A sleeve or a leg of trousers at ease 1: radius at the near and the far end of the bone.
struct Cloth {
  double near, far;
};
constexpr Cloth kSleeveTop{0.043, 0.038}, kSleeve{0.038, 0.033};
constexpr Cloth kLegTop{0.060, 0.050}, kLeg{0.050, 0.043}, kTuckedLeg{0.050, 0.026};
constexpr double kCuffAt = 0.95;  // where long sleeves and trousers end on their bone

/// Cloth lies on the body where that is fuller and bridges it where it is thinner.
void clothe(std::vector<Ring>& rings, const Cloth& cloth, double ease, double unit) {
  for (std::size_t i = 0; i < rings.size(); ++i) {
    const double along = double(i) / double(rings.size() - 1);
    const double loose = unit * (cloth.near + along * (cloth.far - cloth.near));
    for (double Ring::*side : {&Ring::toRight, &Ring::toLeft, &Ring::toFront, &Ring::toBack}) {
      double& radius = rings[i].*side;
      radius = std::max(radius, radius + ease * (loose - radius)) + 0.0025 * unit;
    }
  }
}

struct Thickness {
  double arm, leg;
};
Thickness thicknessOf(const Body& body) {
  const double arm = body.sex == Sex::Male ? 1.0 : 0.85;
  const double soft = 0.4 + 0.6 * body.heft;
  return {arm * (0.45 + 0.55 * body.muscle) * soft, (0.7 + 0.3 * body.muscle) * soft};
}

/// Frame at a share along the forearm: turns from the elbow's to the palm's about the bone.
Mat3 turnedForearm(const Mat3& elbow, const Mat3& wrist, double side, double share) {
  const Vec3 palmRight = elbow.transpose() * wrist.col(0);
  double turn = std::atan2(-palmRight.z(), palmRight.x());  // about up, right → −front is +
  turn *= -side;                                            // 0 palm forward … π palm back
  if (turn < -std::numbers::pi / 4) turn += 2 * std::numbers::pi;
  const double angle = -side * turn * share;
  Mat3 out;
  out.col(0) = std::cos(angle) * elbow.col(0) - std::sin(angle) * elbow.col(2);
  out.col(1) = elbow.col(1);
  out.col(2) = std::sin(angle) * elbow.col(0) + std::cos(angle) * elbow.col(2);
  return out;
}

template <std::size_t N>
std::vector<Ring> bone(const Swell (&swells)[N], const Vec3& from, const Vec3& to,
                       const Mat3& frame, double side, double unit) {
  std::vector<Ring> rings;
  rings.reserve(N);
  for (const Swell& swell : swells)
    rings.push_back(ringAt(from + swell.along * (to - from), frame, swell.girth, side, unit));
  return rings;
}

}  // namespace

std::vector<Ring> upperArmRings(const Sculpt& s, bool left) {
  const double side = sideOf(left), u = s.unit * thicknessOf(s.body).arm;
  const Joint shoulder = left ? Joint::LeftShoulder : Joint::RightShoulder;
  const Joint elbow = left ? Joint::LeftElbow : Joint::RightElbow;
  const Skeleton& k = s.skeleton;
  auto upper = bone(kUpperArm, k[shoulder], k[elbow], k.frameOf(shoulder), side, u);
  const Look& look = s.body.look;
  if (look.clothed && look.sleeves != Cut::Bare) clothe(upper, kSleeveTop, look.topEase, u);
  return upper;
}

std::vector<Ring> forearmRings(const Sculpt& s, bool left) {
  const double side = sideOf(left), u = s.unit * thicknessOf(s.body).arm;
  const Joint elbow = left ? Joint::LeftElbow : Joint::RightElbow;
  const Joint wrist = left ? Joint::LeftWrist : Joint::RightWrist;
  const Skeleton& k = s.skeleton;
  const bool sleeved = s.body.look.clothed && s.body.look.sleeves == Cut::Long;
  const Vec3 end = k[elbow] + (sleeved ? kCuffAt : 1) * (k[wrist] - k[elbow]);
  auto fore = bone(kForearm, k[elbow], end, k.frameOf(elbow), side, u);
  for (std::size_t i = 0; i < fore.size(); ++i) {
    const Mat3 turned = turnedForearm(k.frameOf(elbow), k.frameOf(wrist), side,
                                      std::min(1.0, std::max(0.0, kForearm[i].along - 0.1) / 0.8));
    fore[i].right = turned.col(0);
    fore[i].front = turned.col(2);
  }
  if (sleeved) clothe(fore, kSleeve, s.body.look.topEase, u);
  return fore;
}

std::vector<Ring> thighRings(const Sculpt& s, bool left) {
  const double side = sideOf(left), u = s.unit * thicknessOf(s.body).leg;
  const Joint hip = left ? Joint::LeftHip : Joint::RightHip;
  const Joint knee = left ? Joint::LeftKnee : Joint::RightKnee;
  const Skeleton& k = s.skeleton;
  auto thigh = bone(kThigh, k[hip], k[knee], k.frameOf(hip), side, u);
  const double reach = (0.5 - kHipApart) * s.body.hipBreadth;  // joint to hip's side
  for (std::size_t i = 0; i < 2; ++i)
    (left ? thigh[i].toLeft : thigh[i].toRight) = (i == 0 ? 0.94 : 1.0) * reach;
  const Look& look = s.body.look;
  if (look.clothed && look.legCut != Cut::Bare) clothe(thigh, kLegTop, look.legEase, u);
  return thigh;
}

std::vector<Ring> shankRings(const Sculpt& s, bool left) {
  const double side = sideOf(left), u = s.unit * thicknessOf(s.body).leg;
  const Joint knee = left ? Joint::LeftKnee : Joint::RightKnee;
  const Joint ankle = left ? Joint::LeftAnkle : Joint::RightAnkle;
  const Skeleton& k = s.skeleton;
  auto shank = bone(kShank, k[knee], k[ankle], k.frameOf(knee), side, u);
  const Look& look = s.body.look;
  if (look.clothed && look.legCut == Cut::Long)
    clothe(shank, look.boots > 0 ? kTuckedLeg : kLeg, look.legEase, u);
  return shank;
}

void addUpperArm(Sculpt& s, bool left) {
  const double u = s.unit * thicknessOf(s.body).arm;
  addLoft(s.mesh, smoothed(upperArmRings(s, left), s.fine.along), {0.034 * u, 0.025 * u}, s.fine,
          left ? BodyPart::LeftArm : BodyPart::RightArm);
}

void addForearm(Sculpt& s, bool left) {
  const double u = s.unit * thicknessOf(s.body).arm;
  const bool sleeved = s.body.look.clothed && s.body.look.sleeves == Cut::Long;
  addLoft(s.mesh, smoothed(forearmRings(s, left), s.fine.along),
          {0.025 * u, sleeved ? 0.0 : 0.010 * u}, s.fine,
          left ? BodyPart::LeftForearm : BodyPart::RightForearm);
}

void addThigh(Sculpt& s, bool left) {
  const double u = s.unit * thicknessOf(s.body).leg;
  addLoft(s.mesh, smoothed(thighRings(s, left), s.fine.along), {0.046 * u, 0.032 * u}, s.fine,
          left ? BodyPart::LeftLeg : BodyPart::RightLeg);
}

void addShank(Sculpt& s, bool left) {
  const double u = s.unit * thicknessOf(s.body).leg;
  const Look& look = s.body.look;
  const bool trousered = look.clothed && look.legCut == Cut::Long && look.boots == 0;
  addLoft(s.mesh, smoothed(shankRings(s, left), s.fine.along),
          {0.032 * u, trousered ? 0.0 : 0.014 * u}, s.fine,
          left ? BodyPart::LeftShank : BodyPart::RightShank);
}

}  // namespace tw
