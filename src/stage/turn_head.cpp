// Turning a head: a least-squares problem of two unknowns, the head's turn and its nod, which neck
// and head share as posed() shares the gaze. The miss is the way from where the face looks to where
// the place is seen from the head, which moves as it turns. Gauss-Newton with clamped steps begun
// at the turn that the compass gives; an unknown at its limit takes no part.
//
// Cost: some forty skeletons, 0.1 ms. Does badly: never leans the head aside.
#include "stage/turn_head.h"

#include <Eigen/Core>
#include <algorithm>
#include <cmath>

#include "stage/blocking.h"

namespace tw {
namespace {

constexpr double kDeg = 57.295779513;                 // per radian
constexpr double kNeckShare = 0.4, kHeadShare = 0.6;  // of gaze and nod, as posed() has it
constexpr int kSteps = 12;

/// Turn and nod of a head, and what the pose makes of them.
class HeadTurn {
 public:
  HeadTurn(const Body& body, const Pose& named, const SetFigure& set, const JointLimits& limits)
      : body_(body), pose_(withTurns(named, set.turnsDeg)), set_(set) {
    set_.turnsDeg.clear();
    const TurnRanges& neck = limits.of("neck");
    const double twist = (set.poseMirrored ? -1 : 1) * (turn("neck")[2] + turn("head")[2]);
    const double flex = turn("neck")[0] + turn("head")[0];
    least_ = {std::min(neck[2].least - twist, set.gazeDeg), std::min(neck[0].least - flex, 0.0)};
    most_ = {std::max(neck[2].most - twist, set.gazeDeg), std::max(neck[0].most - flex, 0.0)};
    x_ = {set.gazeDeg, 0};
    neckFlex_ = turn("neck")[0];
    headFlex_ = turn("head")[0];
  }

  void aimAt(const Vec3& place) {
    x_[0] = firstTurn(place);
    x_ = clamped(x_);
    for (int k = 0; k < kSteps; ++k) step(place);
  }

  TurnedHead made(const Vec3& place) const {
    return {pose_, set_, 2 * std::asin(std::min(1.0, miss(place).norm() / 2)) * kDeg};
  }

 private:
  using Two = std::array<double, 2>;

  std::array<double, 3>& turn(const char* joint) {
    return pose_.turnsDeg.try_emplace(joint, std::array<double, 3>{0, 0, 0}).first->second;
  }
  void put(const Two& x) {
    set_.gazeDeg = x[0];
    turn("neck")[0] = neckFlex_ + kNeckShare * x[1];
    turn("head")[0] = headFlex_ + kHeadShare * x[1];
  }
  Two clamped(const Two& x) const {
    return {std::clamp(x[0], least_[0], most_[0]), std::clamp(x[1], least_[1], most_[1])};
  }
  Vec3 miss(const Vec3& place) const {
    const Skeleton s = posed(body_, pose_, set_);
    return (place - headMiddle(s)).normalized() - headFront(s);
  }
  Vec3 missAt(const Two& x, const Vec3& place) {
    put(x);
    return miss(place);
  }

  /// The turn from the chest's front to the place, by the compass.
  double firstTurn(const Vec3& place) {
    put({0, 0});
    const Skeleton s = posed(body_, pose_, set_);
    const Vec3 way = place - headMiddle(s), front = headFront(s);
    if (std::hypot(front.x(), front.z()) < 0.3 || std::hypot(way.x(), way.z()) < 0.1) return x_[0];
    return std::remainder(headingOf(way) - headingOf(front), 360.0);
  }

  void step(const Vec3& place) {
    constexpr double kProbeDeg = 0.05, kLongestDeg = 25;
    const Vec3 now = missAt(x_, place);
    const Vec3 a = (missAt({x_[0] + kProbeDeg, x_[1]}, place) - now) / kProbeDeg;
    const Vec3 b = (missAt({x_[0], x_[1] + kProbeDeg}, place) - now) / kProbeDeg;
    // An unknown at its limit that would be pushed farther takes no part.
    const double ga = a.dot(now), gb = b.dot(now);
    const bool freeA = !(x_[0] <= least_[0] && ga > 0) && !(x_[0] >= most_[0] && ga < 0);
    const bool freeB = !(x_[1] <= least_[1] && gb > 0) && !(x_[1] >= most_[1] && gb < 0);
    Eigen::Matrix2d m;
    m << a.dot(a), a.dot(b), a.dot(b), b.dot(b);
    if (!freeA || !freeB) m(0, 1) = m(1, 0) = 0;
    m += 1e-9 * Eigen::Matrix2d::Identity();
    const double det = m(0, 0) * m(1, 1) - m(0, 1) * m(1, 0);
    const double da = freeA ? -(m(1, 1) * ga - m(0, 1) * (freeB ? gb : 0)) / det : 0;
    const double db = freeB ? -(m(0, 0) * gb - m(1, 0) * (freeA ? ga : 0)) / det : 0;
    x_ = clamped({x_[0] + std::clamp(da, -kLongestDeg, kLongestDeg),
                  x_[1] + std::clamp(db, -kLongestDeg, kLongestDeg)});
    put(x_);
  }

  const Body& body_;
  Pose pose_;
  SetFigure set_;
  Two least_{}, most_{}, x_{};
  double neckFlex_ = 0, headFlex_ = 0;
};

}  // namespace

TurnedHead headTurnedTo(const Body& body, const Pose& named, const SetFigure& set,
                        const Vec3& place, const JointLimits& limits) {
  HeadTurn head(body, named, set, limits);
  head.aimAt(place);
  return head.made(place);
}

}  // namespace tw
