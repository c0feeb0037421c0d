// A hand: palm block, forefinger, a block of the two middle fingers, little finger, thumb. In a
// wrist's frame the fingers point down, the palm looks to the front and the thumb lies outward.
#include <array>
#include <cmath>
#include <numbers>

#include "stage/body_parts.h"

namespace tw {
namespace {

using Mat3 = Eigen::Matrix3d;
constexpr double kRad = std::numbers::pi / 180;

/// How a shape of the hand bends: knuckle, middle and end joints in degrees toward the palm;
/// the thumb's spread away from the hand, its turn toward the palm, and the bend of its end.
struct Bends {
  std::array<double, 3> fore, others;
  double spread;  ///< fan between forefinger and the rest, degrees
  double thumbOut, thumbFront, thumbBend;
};

Bends bendsOf(HandShape shape) {
  switch (shape) {
    case HandShape::Open:
      return {{-8, 6, 4}, {2, 12, 8}, 12, 58, 12, 5};
    case HandShape::Flat:
      return {{0, 2, 2}, {0, 4, 4}, 2, 24, 8, 5};
    case HandShape::Fist:
      return {{82, 98, 60}, {86, 98, 60}, 0, 8, 62, 62};
    case HandShape::Grip:
      return {{52, 78, 50}, {60, 80, 50}, 4, 22, 66, 40};
    case HandShape::Point:
      return {{0, 4, 2}, {84, 98, 60}, 2, 12, 56, 60};
    case HandShape::Cup:
      return {{28, 28, 18}, {34, 32, 20}, 6, 40, 42, 15};
    case HandShape::Relaxed:
      break;
  }
  return {{14, 22, 14}, {26, 32, 20}, 4, 26, 26, 14};
}

// Shares of the hand's length (palm + longest finger = 1).
constexpr double kPalm = 0.54;
constexpr double kHalfBreadth = 0.215;
constexpr double kHalfThick = 0.085;

struct HandSpace {
  Vec3 wrist;
  Vec3 down, palm, thumb;  ///< unit axes
  double size;
  Vec3 at(double along, double out, double front) const {
    return wrist + size * (along * down + out * thumb + front * palm);
  }
};

Ring across(const Vec3& centre, const Vec3& wide, const Vec3& thick, double half, double depth) {
  Ring ring;
  ring.centre = centre;
  ring.right = wide;
  ring.front = thick;
  ring.toRight = ring.toLeft = half;
  ring.toFront = ring.toBack = depth;
  ring.square = 0.3;
  return ring;
}

void addPalm(Sculpt& s, const HandSpace& h, BodyPart part) {
  std::vector<Ring> rings;
  const auto slice = [&](double along, double out, double half, double depth) {
    rings.push_back(across(h.at(along, out, 0), h.thumb, h.palm, half * h.size, depth * h.size));
  };
  slice(-0.06, 0, 0.14, 0.105);
  slice(0.12, 0.01, 0.175, 0.112);
  slice(0.34, 0.01, 0.215, 0.100);
  slice(kPalm, 0.0, kHalfBreadth, kHalfThick);
  addLoft(s.mesh, rings, {0.03 * h.size, 0.06 * h.size}, s.fine, part);
}

/// A finger, or a block of them, from its knuckle on. `wide` is its axis of bending.
void addFinger(Sculpt& s, const HandSpace& h, const Vec3& knuckle, double fan,
               const std::array<double, 3>& bends, double length, double half, double depth,
               BodyPart part) {
  constexpr double kShares[] = {0.46, 0.30, 0.24};
  const Vec3 down = std::cos(fan * kRad) * h.down + std::sin(fan * kRad) * h.thumb;
  const Vec3 wide = std::cos(fan * kRad) * h.thumb - std::sin(fan * kRad) * h.down;
  std::vector<Ring> rings;
  Vec3 at = knuckle;
  double bend = 0;
  const auto ring = [&](double angle, double scale) {
    const Vec3 thick = std::cos(angle * kRad) * h.palm - std::sin(angle * kRad) * down;
    rings.push_back(across(at, wide, thick, scale * half * h.size, scale * depth * h.size));
  };
  ring(0.3 * bends[0], 1.0);
  for (std::size_t i = 0; i < 3; ++i) {
    bend += bends[i];
    at += kShares[i] * length * h.size *
          (std::cos(bend * kRad) * down + std::sin(bend * kRad) * h.palm);
    ring(i < 2 ? bend + 0.5 * bends[i + 1] : bend, i == 0 ? 0.96 : i == 1 ? 0.88 : 0.72);
  }
  Fineness fine = s.fine;
  fine.around = std::max(5, fine.around / 2);
  fine.caps = 1;
  addLoft(s.mesh, rings, {0, 0.5 * depth * h.size}, fine, part);
}

void addThumb(Sculpt& s, const HandSpace& h, const Bends& bends, BodyPart part) {
  const double out = bends.thumbOut * kRad, front = bends.thumbFront * kRad;
  const Vec3 along = (std::cos(out) * std::cos(front) * h.down + std::sin(out) * h.thumb +
                      std::cos(out) * std::sin(front) * h.palm)
                         .normalized();
  // The end bends across the palm, away from the thumb's own side.
  const Vec3 inward = (-h.thumb + 0.4 * h.down + 0.2 * h.palm);
  const Vec3 side = (inward - inward.dot(along) * along).normalized();
  const double bend = bends.thumbBend * kRad;
  const Vec3 end = std::cos(bend) * along + std::sin(bend) * side;
  const Vec3 thick = along.cross(side);
  const Vec3 root = h.at(0.12, 0.13, 0.03), joint = root + 0.32 * h.size * along,
             tip = joint + 0.21 * h.size * end;
  std::vector<Ring> rings;
  const Vec3 half = (std::cos(0.5 * bend) * side - std::sin(0.5 * bend) * along);
  const Vec3 last = (std::cos(bend) * side - std::sin(bend) * along);
  rings.push_back(across(root, side, thick, 0.105 * h.size, 0.095 * h.size));
  rings.push_back(across(root + 0.6 * (joint - root), side, thick, 0.085 * h.size, 0.08 * h.size));
  rings.push_back(across(joint, half, thick, 0.072 * h.size, 0.070 * h.size));
  rings.push_back(across(tip, last, thick, 0.055 * h.size, 0.052 * h.size));
  Fineness fine = s.fine;
  fine.around = std::max(5, fine.around / 2);
  fine.caps = 1;
  addLoft(s.mesh, rings, {0.03 * h.size, 0.04 * h.size}, fine, part);
}

}  // namespace

void addHand(Sculpt& s, bool left) {
  const Joint joint = left ? Joint::LeftWrist : Joint::RightWrist;
  const Mat3& frame = s.skeleton.frameOf(joint);
  const HandSpace h{s.skeleton[joint], -frame.col(1), frame.col(2), sideOf(left) * frame.col(0),
                    s.body.hand};
  const auto part = left ? BodyPart::LeftHand : BodyPart::RightHand;
  const Bends bends = bendsOf(left ? s.skeleton.leftHand : s.skeleton.rightHand);
  addPalm(s, h, part);
  addFinger(s, h, h.at(kPalm, 0.135, 0), 0.6 * bends.spread, bends.fore, 0.42, 0.068, 0.066, part);
  addFinger(s, h, h.at(kPalm, -0.012, 0), 0, bends.others, 0.46, 0.100, 0.068, part);
  addFinger(s, h, h.at(kPalm - 0.02, -0.158, 0), -0.8 * bends.spread, bends.others, 0.37, 0.056,
            0.060, part);
  addThumb(s, h, bends, part);
}

}  // namespace tw
