// Garments that stand off the body, as volumes.
//
// A skirt (also of a jacket or coat) is one loft from the waist down. Its upper rings are the
// trunk's, a little wider; below the hips each ring goes round both legs at the same share of
// their length, square to the way in which the legs lead, which gravity bends down again the
// farther it hangs. So it swings with a stride, lies over the lap when somebody sits and stays a
// closed surface. Cost: some fourteen rings. Does badly: legs that part widely fore and aft make
// it a sack; it never folds on itself.
// Radii are drawn by eye; common practice, no source.
#include <algorithm>
#include <cmath>
#include <numbers>

#include "stage/body_parts.h"
#include "stage/figure_proportions.h"

namespace tw {
namespace {

using Mat3 = Eigen::Matrix3d;

Joint jointOf(bool left, Joint leftOne, Joint rightOne) {
  return left ? leftOne : rightOne;
}

/// A place on the leg: share 0 hip … 0.5 knee … 1 ankle.
Vec3 onLeg(const Skeleton& k, bool left, double share) {
  using enum Joint;
  const Vec3& hip = k[jointOf(left, LeftHip, RightHip)];
  const Vec3& knee = k[jointOf(left, LeftKnee, RightKnee)];
  const Vec3& ankle = k[jointOf(left, LeftAnkle, RightAnkle)];
  return share < 0.5 ? Vec3(hip + 2 * share * (knee - hip))
                     : Vec3(knee + (2 * share - 1) * (ankle - knee));
}

Vec3 legsMiddle(const Skeleton& k, double share) {
  return 0.5 * (onLeg(k, true, share) + onLeg(k, false, share));
}

/// Right, up and front of a skirt's ring that hangs along `down`.
Mat3 hangingFrame(const Mat3& pelvis, const Vec3& down) {
  Mat3 frame;
  frame.col(1) = -down;
  frame.col(0) = (pelvis.col(0) - pelvis.col(0).dot(down) * down).normalized();
  frame.col(2) = frame.col(0).cross(frame.col(1));
  return frame;
}

Ring ringRoundLegs(const Sculpt& s, double share) {
  const Skeleton& k = s.skeleton;
  const Look& look = s.body.look;
  const Vec3 lead = legsMiddle(k, std::min(1.0, share + 0.12)) - legsMiddle(k, share - 0.12);
  const Vec3 down = (lead.normalized() * (1 - 0.6 * share) + Vec3(0, -0.6 * share, 0)).normalized();
  const Mat3 frame = hangingFrame(k.frameOf(Joint::Pelvis), down);
  const double soft = 0.6 + 0.4 * s.body.heft;
  const double leg = (share < 0.5 ? 0.068 - 0.044 * share : 0.046) * s.unit * soft;
  const double off = (0.011 + 0.012 * look.topEase + 0.085 * look.flare * share) * s.unit;
  Ring ring;
  ring.centre = legsMiddle(k, share);
  ring.right = frame.col(0);
  ring.front = frame.col(2);
  double across = 0, front = 0, back = 0;
  for (const bool left : {true, false}) {
    const Vec3 by = onLeg(k, left, share) - ring.centre;
    across = std::max(across, std::abs(by.dot(ring.right)));
    front = std::max(front, by.dot(ring.front));
    back = std::max(back, -by.dot(ring.front));
  }
  ring.toRight = ring.toLeft = across + leg + off;
  ring.toFront = front + leg + off;
  ring.toBack = back + leg + off;
  ring.square = 0.12;
  return ring;
}

Ring tilted(Ring ring, double deg) {
  const Vec3 up = ring.right.cross(ring.front);
  const double a = deg * std::numbers::pi / 180;
  ring.front = std::cos(a) * ring.front - std::sin(a) * (up.dot(Vec3::UnitY()) >= 0 ? up : -up);
  return ring;
}

struct CollarShape {
  double low, high;  ///< along the neck, 0 pit … 1 skull
  double wideLow, wideHigh;
  double tiltDeg;
};

CollarShape shapeOf(Collar collar) {
  switch (collar) {
    case Collar::Wide:
      return {-0.12, 0.74, 0.062, 0.068, 26};
    case Collar::Stand:
      return {-0.08, 0.62, 0.053, 0.049, 14};
    case Collar::Shirt:
      return {-0.04, 0.46, 0.051, 0.051, 20};
    case Collar::Round:
    case Collar::None:
      break;
  }
  return {-0.06, 0.22, 0.050, 0.045, 16};
}

std::vector<Ring> bandRound(const Sculpt& s, const CollarShape& shape) {
  const Skeleton& k = s.skeleton;
  const double u = s.unit * (s.body.sex == Sex::Male ? 1.0 : 0.88) * (0.6 + 0.4 * s.body.heft);
  const Vec3 base = k[Joint::Neck], skull = k[Joint::Head];
  std::vector<Ring> rings;
  for (const double t : {0.0, 0.5, 1.0}) {
    const double along = shape.low + t * (shape.high - shape.low);
    const double wide = shape.wideLow + t * (shape.wideHigh - shape.wideLow);
    Ring ring = ringAt(base + along * (skull - base), k.frameOf(Joint::Neck),
                       {wide, wide, 0.92 * wide, wide}, 1, u);
    rings.push_back(tilted(ring, shape.tiltDeg));
  }
  return rings;
}

void addScarf(Sculpt& s) {
  std::vector<Ring> rings = bandRound(s, {-0.12, 0.62, 0.056, 0.052, 18});
  for (double Ring::*side : {&Ring::toRight, &Ring::toLeft, &Ring::toFront, &Ring::toBack})
    rings[1].*side *= 1.22;
  addLoft(s.mesh, smoothed(rings, s.fine.along), {0.004 * s.unit, 0.004 * s.unit}, s.fine,
          BodyPart::Scarf);
  const Mat3& chest = s.skeleton.frameOf(Joint::Chest);
  const Vec3 knot = s.skeleton[Joint::Neck] + chest * Vec3(0.02, -0.02, 0.055) * s.unit;
  const Vec3 end = knot + chest * Vec3(0.012, -0.105, 0.012) * s.unit;
  rings.clear();
  for (const double t : {0.0, 0.4, 1.0})
    rings.push_back(ringAt(knot + t * (end - knot), chest,
                           {0.014 + 0.010 * t, 0.014 + 0.010 * t, 0.013, 0.013}, 1, s.unit));
  addLoft(s.mesh, rings, {0.01 * s.unit, 0}, s.fine, BodyPart::Scarf);
}

/// The wide mouth of a glove over the end of the sleeve.
void addGauntlet(Sculpt& s, bool left) {
  std::vector<Ring> fore = forearmRings(s, left);
  const Ring end = fore.back(), middle = fore[fore.size() - 2];
  std::vector<Ring> rings;
  constexpr double kShare[] = {0.55, 0.85, 1.12}, kWide[] = {1.25, 1.12, 0.95};
  for (int i = 0; i < 3; ++i) {
    Ring ring = end;
    ring.centre = middle.centre + kShare[i] * (end.centre - middle.centre);
    for (double Ring::*side : {&Ring::toRight, &Ring::toLeft, &Ring::toFront, &Ring::toBack})
      ring.*side = kWide[i] * std::max(end.*side, 0.021 * s.unit);
    rings.push_back(ring);
  }
  addLoft(s.mesh, smoothed(rings, s.fine.along), {0, 0.006 * s.unit}, s.fine,
          left ? BodyPart::LeftHand : BodyPart::RightHand);
}

void addBoot(Sculpt& s, bool left) {
  const std::vector<Ring> shank = shankRings(s, left);
  const double top = 1 - s.body.look.boots;
  std::vector<Ring> rings;
  constexpr double kWide[] = {0.0130, 0.0075, 0.0065, 0.0065};  // how far the shaft stands off
  for (int i = 0; i < 4; ++i) {
    const double along = top + (1.02 - top) * i / 3.0;
    const double place = std::min(along, 1.0) * double(shank.size() - 1);
    const auto low = std::min(static_cast<std::size_t>(place), shank.size() - 2);
    const double t = place - double(low);
    Ring ring = shank[low];
    const Vec3 from = shank.front().centre, to = shank.back().centre;
    ring.centre = from + along * (to - from);
    for (double Ring::*side : {&Ring::toRight, &Ring::toLeft, &Ring::toFront, &Ring::toBack})
      ring.*side = (1 - t) * shank[low].*side + t * shank[low + 1].*side + kWide[i] * s.unit;
    rings.push_back(ring);
  }
  addLoft(s.mesh, smoothed(rings, s.fine.along), {0, 0.01 * s.unit}, s.fine,
          left ? BodyPart::LeftFoot : BodyPart::RightFoot);
}

}  // namespace

std::vector<Ring> skirtRings(const Sculpt& s) {
  const Look& look = s.body.look;
  if (!look.clothed || look.skirtLength <= 0) return {};
  const std::vector<Ring> trunk = trunkRings(s);
  std::vector<Ring> rings{trunk[5], trunk[4], trunk[3], trunk[2]};
  const double off = (0.003 + 0.005 * look.topEase) * s.unit;
  for (std::size_t i = 0; i < rings.size(); ++i)
    for (double Ring::*side : {&Ring::toRight, &Ring::toLeft, &Ring::toFront, &Ring::toBack})
      rings[i].*side += off * (0.5 + 0.85 * double(i));
  if (look.skirtLength < 0.1) rings.pop_back();
  constexpr double kUnderHips = 0.14;
  if (look.skirtLength < kUnderHips) return rings;
  const int steps =
      std::max(1, static_cast<int>(std::ceil((look.skirtLength - kUnderHips) / 0.12)));
  for (int i = 0; i <= steps; ++i) {
    const double share = kUnderHips + (look.skirtLength - kUnderHips) * i / steps;
    if (share >= kUnderHips) rings.push_back(ringRoundLegs(s, share));
  }
  return rings;
}

std::vector<Ring> collarRings(const Sculpt& s) {
  if (!s.body.look.clothed) return {};
  return bandRound(s, shapeOf(s.body.look.collar));
}

void addGarments(Sculpt& s) {
  const Look& look = s.body.look;
  if (const std::vector<Ring> skirt = skirtRings(s); !skirt.empty()) {
    addLoft(s.mesh, smoothed(skirt, s.fine.along), {0, 0}, s.fine, BodyPart::Skirt);
  }
  if (look.collar != Collar::None)
    addLoft(s.mesh, collarRings(s), {0, 0.003 * s.unit}, s.fine, BodyPart::Torso);
  if (look.scarfWorn) addScarf(s);
  for (const bool left : {true, false}) {
    if (look.gloves) addGauntlet(s, left);
    if (look.boots > 0) addBoot(s, left);
  }
}

}  // namespace tw
