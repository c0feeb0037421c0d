// Heights of the joints: Drillis and Contini 1966, as skeleton_test checks them.
#include "stage/joint_cuts.h"

#include <doctest/doctest.h>

#include <algorithm>

#include "geometry/polygon.h"

namespace tw {
namespace {

constexpr double kAspect = 1.5, kAwayM = 4;
const Polygon kPanel = polygonOf(Rect{{0, 0}, {90, 60}});

/// Joints cut by a panel whose lower edge lies at that height, seen level from the front.
std::vector<std::string> cutAt(double (*height)(const Skeleton&)) {
  const Body body = bodyOf({"ada", "ADA", {}, Sex::Female, 1.68, "medium", ""});
  const Pose pose;
  Actor actor{SetFigure{}, &body, &pose, posed(body, pose, SetFigure{}), {}, 0};
  CameraPlace place;
  const double focal = 50.0 / 36;  // frame widths
  place.eye = {0, height(actor.skeleton) + kAwayM * 0.5 / kAspect / focal, -kAwayM};
  const Camera camera(place, kAspect);
  std::vector<Solid> solids{{.mesh = bodyMesh(body, actor.skeleton)}};
  solids[0].figure = 0;
  const PanelSight sight(solids, camera, kPanel, 300, Vec3::UnitY());
  std::vector<std::string> names;
  for (const JointCut& cut : jointCuts(sight, actor, 0)) {
    CHECK(cut.at.y == doctest::Approx(60).epsilon(0.03));
    names.push_back(cut.joint);
  }
  std::ranges::sort(names);
  return names;
}

std::vector<std::string> sorted(std::string_view left, std::string_view right) {
  std::vector<std::string> names{std::string(left), std::string(right)};
  std::ranges::sort(names);
  return names;
}

}  // namespace

TEST_CASE("an edge at the knees cuts both knees and nothing else") {
  CHECK(cutAt([](const Skeleton& s) { return s[Joint::LeftKnee].y(); }) ==
        sorted(nameOf(Joint::LeftKnee), nameOf(Joint::RightKnee)));
}

TEST_CASE("an edge half way down the thigh or the shank cuts no joint of the leg") {
  CHECK(cutAt([](const Skeleton& s) {
          return 0.5 * (s[Joint::LeftKnee].y() + s[Joint::LeftAnkle].y());
        }).empty());
  CHECK(cutAt([](const Skeleton& s) {
          return s[Joint::LeftKnee].y() + 0.35 * (s[Joint::LeftHip].y() - s[Joint::LeftKnee].y());
        }).empty());
}

}  // namespace tw
