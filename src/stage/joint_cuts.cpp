// A joint is cut when its place on the picture lies within 1.8 % of the stature (at its depth) of
// the panel's outline, what leads to it lies in the panel and is seen, and what hangs on it lies
// outside. The tolerance is cutsAtJoint's, half the way to the next good cut line; that edges
// should keep off neck, elbow, wrist, knee and ankle is common practice (facts: staging §7.2).
#include "stage/joint_cuts.h"

#include "geometry/polygon.h"

namespace tw {
namespace {

constexpr double kTolerance = 0.018;  // of the stature

struct Chain {
  Joint before, joint, behind;
};

}  // namespace

std::vector<JointCut> jointCuts(const PanelSight& sight, const Actor& actor, int index) {
  using enum Joint;
  static constexpr std::array<Chain, 9> kChains{{{Head, Neck, Chest},
                                                 {LeftShoulder, LeftElbow, LeftWrist},
                                                 {RightShoulder, RightElbow, RightWrist},
                                                 {LeftElbow, LeftWrist, LeftFingertip},
                                                 {RightElbow, RightWrist, RightFingertip},
                                                 {LeftHip, LeftKnee, LeftAnkle},
                                                 {RightHip, RightKnee, RightAnkle},
                                                 {LeftKnee, LeftAnkle, LeftToe},
                                                 {RightKnee, RightAnkle, RightToe}}};
  std::vector<JointCut> out;
  const Camera& camera = sight.camera;
  const auto onPage = [&](const Vec3& at) {
    const Point p = camera.projectAlways(at);
    return Point{sight.frame.min.x + p.x * sight.frame.width(),
                 sight.frame.min.y + p.y * sight.frame.width()};
  };
  const auto isShown = [&](const Vec3& at) {
    const Point p = camera.projectAlways(at);
    const int x = static_cast<int>(p.x * sight.picture.width);
    const int y = static_cast<int>(p.y * sight.picture.width);
    if (x < 0 || y < 0 || x >= sight.picture.width || y >= sight.picture.height) return false;
    return sight.picture.solid[static_cast<std::size_t>(y) * sight.picture.width +
                               static_cast<std::size_t>(x)] == index;
  };
  for (const Chain& chain : kChains) {
    const Skeleton& s = actor.skeleton;
    const Vec3 &before = s[chain.before], &joint = s[chain.joint], &behind = s[chain.behind];
    if (std::min({camera.depth(before), camera.depth(joint), camera.depth(behind)}) < kNearM)
      continue;
    if (!contains(sight.panel, onPage(before)) || contains(sight.panel, onPage(behind))) continue;
    const double mmPerM = camera.intrinsics()(0, 0) * sight.frame.width() / camera.depth(joint);
    const Point at = onPage(joint);
    if (distanceToOutline(sight.panel, at) > kTolerance * actor.body->stature * mmPerM) continue;
    if (!isShown((before + joint) / 2)) continue;
    out.push_back({std::string(nameOf(chain.joint)), at});
  }
  return out;
}

}  // namespace tw
