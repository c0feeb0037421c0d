// A foot: a wedge from the heel up to the instep and down to the toes, flat below. Its toes bend
// at the ball.
#include "stage/body_parts.h"
#include "stage/figure_proportions.h"

namespace tw {
namespace {

/// A slice across the foot: how far before the ankle (foot lengths; before the ball for the toes),
/// half breadths toward the little and the big toe (foot breadths), top and bottom above the sole
/// (ankle heights).
struct Slice {
  double forward, little, big, top, bottom;
};
constexpr Slice kFoot[] = {{-0.235, 0.25, 0.25, 0.62, 0.14}, {-0.17, 0.33, 0.32, 0.98, 0.02},
                           {-0.06, 0.36, 0.34, 1.28, 0.00},  {0.08, 0.36, 0.35, 1.22, 0.03},
                           {0.23, 0.38, 0.38, 0.92, 0.06},   {0.38, 0.46, 0.45, 0.66, 0.04},
                           {0.50, 0.51, 0.48, 0.50, 0.00}};
constexpr Slice kToes[] = {{-0.07, 0.46, 0.43, 0.38, 0.06},
                           {0.03, 0.49, 0.47, 0.44, 0.00},
                           {0.14, 0.36, 0.45, 0.34, 0.00},
                           {0.205, 0.16, 0.36, 0.26, 0.03}};

Ring ringOf(const Sculpt& s, const Slice& slice, const Vec3& origin, const Eigen::Matrix3d& frame,
            double soleBelow, double side) {
  const double breadth = s.body.footBreadth, high = s.body.ankleHeight;
  const double middle = 0.5 * (slice.top + slice.bottom), half = 0.5 * (slice.top - slice.bottom);
  Ring ring;
  ring.centre =
      origin + frame * Vec3(0, middle * high - soleBelow, slice.forward * s.body.footLength);
  ring.right = frame.col(0);
  ring.front = frame.col(1);
  ring.toRight = breadth * (side > 0 ? slice.little : slice.big);
  ring.toLeft = breadth * (side > 0 ? slice.big : slice.little);
  ring.toFront = ring.toBack = half * high;
  ring.square = 0.35;
  return ring;
}

}  // namespace

void addFoot(Sculpt& s, bool left) {
  const double side = sideOf(left);
  const auto part = left ? BodyPart::LeftFoot : BodyPart::RightFoot;
  const Joint ankle = left ? Joint::LeftAnkle : Joint::RightAnkle;
  const Joint toe = left ? Joint::LeftToe : Joint::RightToe;
  const double high = s.body.ankleHeight;
  std::vector<Ring> foot, toes;
  for (const Slice& slice : kFoot)
    foot.push_back(ringOf(s, slice, s.skeleton[ankle], s.skeleton.frameOf(ankle), high, side));
  for (const Slice& slice : kToes)
    toes.push_back(
        ringOf(s, slice, s.skeleton[toe], s.skeleton.frameOf(toe), kBallUp * high, side));
  const Ends heel{0.025 * s.body.footLength, 0.03 * s.body.footLength};
  addLoft(s.mesh, foot, heel, s.fine, part);
  addLoft(s.mesh, toes, {0, 0.035 * s.body.footLength}, s.fine, part);
}

}  // namespace tw
