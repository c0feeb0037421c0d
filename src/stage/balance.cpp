// Segment masses and mass centres: Winter DA (2009) Biomechanics and Motor Control of Human
// Movement, Table 4.1 (after Dempster 1955). The masses sum to exactly 1.
//
// Balance after Hof, Gazendam & Sinke (2005) J. Biomech. 38:1-8: static stability means that the
// vertical through the mass centre meets the base of support; the margin is the least distance to
// the border. Does badly: walls and props that carry weight are not known here.
#include "stage/balance.h"

#include <fmt/format.h>

#include <cmath>

#include "geometry/polygon.h"
#include "stage/figure_proportions.h"

namespace tw {
namespace {

struct Segment {
  Joint from, to;
  double mass, share;  ///< share of the way from → to at which the mass lies
};

constexpr double kTrunkMass = 0.497, kHeadMass = 0.081;
constexpr double kEarUp = 0.30;  // ear canal above the chin / head height: 0.909 of stature

constexpr Segment kLimbs[] = {{Joint::LeftShoulder, Joint::LeftElbow, 0.028, 0.436},
                              {Joint::LeftElbow, Joint::LeftWrist, 0.016, 0.430},
                              {Joint::LeftWrist, Joint::LeftFingertip, 0.006, 0.506},
                              {Joint::LeftHip, Joint::LeftKnee, 0.100, 0.433},
                              {Joint::LeftKnee, Joint::LeftAnkle, 0.0465, 0.433},
                              {Joint::LeftAnkle, Joint::LeftToe, 0.0145, 0.500},
                              {Joint::RightShoulder, Joint::RightElbow, 0.028, 0.436},
                              {Joint::RightElbow, Joint::RightWrist, 0.016, 0.430},
                              {Joint::RightWrist, Joint::RightFingertip, 0.006, 0.506},
                              {Joint::RightHip, Joint::RightKnee, 0.100, 0.433},
                              {Joint::RightKnee, Joint::RightAnkle, 0.0465, 0.433},
                              {Joint::RightAnkle, Joint::RightToe, 0.0145, 0.500}};

constexpr double kTouchM = 0.025;     // soles, knees and palms give a little
constexpr double kMovesFrom = 0.35;   // Pose::motion from which a pose is not meant to stand
constexpr double kUpperArm = 0.186;   // Drillis & Contini: flesh scales with the limbs' stature
constexpr double kSeatUnder = 0.052;  // seat bone below the pelvis / the same stature

bool isAnkle(Joint joint) {
  return joint == Joint::LeftAnkle || joint == Joint::RightAnkle;
}
bool isToe(Joint joint) {
  return joint == Joint::LeftToe || joint == Joint::RightToe;
}

void addFoot(const Body& body, const Skeleton& s, bool left, std::vector<Contact>& out) {
  const Joint ankle = left ? Joint::LeftAnkle : Joint::RightAnkle;
  const Joint toe = left ? Joint::LeftToe : Joint::RightToe;
  const auto& foot = s.frameOf(ankle);
  const double sole = kBallUp * body.ankleHeight;
  out.push_back(
      {ankle, s[ankle] + foot * Vec3(0, -body.ankleHeight, -kHeelBack * body.footLength)});
  out.push_back({ankle, s[toe] + foot * Vec3(0, -sole, 0)});
  out.push_back({toe, s[toe] + s.frameOf(toe) * Vec3(0, -sole, kToesLong * body.footLength)});
}

/// What a contact covers of the floor, as corners about it: half a foot's breadth across for feet,
/// a patch for knees and hands, more for the seat.
double patchOf(const Body& body, Joint joint) {
  if (isAnkle(joint) || isToe(joint)) return 0.4 * body.footBreadth;
  return joint == Joint::Pelvis || joint == Joint::Chest ? 0.3 * body.hipBreadth
                                                         : 0.02 * body.stature;
}

Polygon supportOf(const Body& body, const std::vector<Contact>& contacts, double floor) {
  std::vector<Point> corners;
  for (const Contact& c : contacts) {
    if (!touches(c, floor)) continue;
    const double patch = patchOf(body, c.joint);
    for (int k = 0; k < 8; ++k) {
      const double a = 0.7853981634 * k;
      corners.push_back({c.at.x() + patch * std::cos(a), c.at.z() + patch * std::sin(a)});
    }
  }
  return corners.size() < 3 ? Polygon{} : hull(std::move(corners));
}

std::string labelOf(const Balance& b, const Pose& pose) {
  if (pose.support == "none") return "in the air: not judged";
  if (pose.motion >= kMovesFrom) return "moves: not judged";
  if (b.support.points.empty()) return "rests on nothing that is known: not judged";
  const double cm = 100 * std::abs(b.marginM);
  return b.marginM >= 0 ? fmt::format("{:.0f} cm inside its support", cm)
                        : fmt::format("{:.0f} cm outside its support: it would fall", cm);
}

}  // namespace

std::vector<Contact> contactsOf(const Body& body, const Skeleton& s) {
  using enum Joint;
  std::vector<Contact> out;
  addFoot(body, s, true, out);
  addFoot(body, s, false, out);
  const double unit = body.upperArm / kUpperArm * (0.4 + 0.6 * body.heft);
  const auto add = [&](Joint joint, const Vec3& at, double flesh) {
    out.push_back({joint, at - Vec3(0, flesh * unit, 0)});
  };
  add(LeftKnee, s[LeftKnee], 0.031);
  add(RightKnee, s[RightKnee], 0.031);
  add(LeftWrist, s[LeftWrist] + 0.6 * (s[LeftFingertip] - s[LeftWrist]), 0.012);
  add(RightWrist, s[RightWrist] + 0.6 * (s[RightFingertip] - s[RightWrist]), 0.012);
  add(LeftElbow, s[LeftElbow], 0.024);
  add(RightElbow, s[RightElbow], 0.024);
  add(Pelvis, s[Pelvis], kSeatUnder + 0.016);
  out.push_back({Chest, s[Chest] - s.frameOf(Chest).col(2) * 0.51 * body.chestDepth});
  return out;
}

bool touches(const Contact& contact, double floor) {
  return contact.at.y() < floor + kTouchM;
}

Balance balanceOf(const Body& body, const Pose& pose, const Skeleton& skeleton, double floor) {
  Balance b;
  b.massCentre = centreOfMass(body, skeleton);
  std::vector<Contact> contacts = contactsOf(body, skeleton);
  // A seat carries whatever sits on it, at whatever height.
  if (pose.seat > 0)
    for (Contact& c : contacts)
      if (c.joint == Joint::Pelvis) c.at.y() = floor;
  b.support = supportOf(body, contacts, floor);
  b.judged = pose.support != "none" && pose.motion < kMovesFrom && !b.support.points.empty();
  if (!b.support.points.empty()) {
    const Point down{b.massCentre.x(), b.massCentre.z()};
    const double edge = distanceToOutline(b.support, down);
    b.marginM = contains(b.support, down) ? edge : -edge;
  }
  b.label = labelOf(b, pose);
  return b;
}

std::array<MassPart, 16> massParts(const Body& body, const Skeleton& skeleton) {
  std::array<MassPart, 16> out;
  std::size_t n = 0;
  for (const Segment& s : kLimbs)
    out[n++] = {s.from, skeleton[s.from] + s.share * (skeleton[s.to] - skeleton[s.from]), s.mass};
  // The trunk's lies half-way from the hips to the shoulders' middle.
  for (const Joint shoulder : {Joint::LeftShoulder, Joint::RightShoulder})
    out[n++] = {shoulder, skeleton[shoulder], kTrunkMass / 4};
  out[n++] = {Joint::Pelvis, skeleton[Joint::Pelvis], kTrunkMass / 2};
  const Vec3 ears = skeleton[Joint::Head] +
                    skeleton.frameOf(Joint::Head).col(1) * (kEarUp - kHeadUp) * body.headHeight;
  out[n++] = {Joint::Head, ears, kHeadMass};
  return out;
}

Vec3 centreOfMass(const Body& body, const Skeleton& skeleton) {
  Vec3 sum = Vec3::Zero();
  for (const MassPart& part : massParts(body, skeleton)) sum += part.mass * part.at;
  return sum;
}

}  // namespace tw
