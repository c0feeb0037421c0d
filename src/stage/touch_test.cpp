#include "stage/touch.h"

#include <doctest/doctest.h>

#include "geometry/polygon.h"
#include "stage/pose_variants.h"
#include "stage/reach_pose.h"
#include "stage/solid_shapes.h"

namespace tw {

// By hand: a box of 2 × 1 × 4 m standing on the ground, its middle at the origin.
TEST_CASE("distances to a box are those of its sides edges and corners") {
  const Mesh box = boxMesh({2, 1, 4});
  CHECK(distanceToSurface(box, {0, 1.5, 0}) == doctest::Approx(0.5));
  CHECK(distanceToSurface(box, {1.3, 0.5, 1}) == doctest::Approx(0.3));
  CHECK(distanceToSurface(box, {1.3, 1.4, 0}) == doctest::Approx(0.5));
  CHECK(distanceToSurface(box, {1.2, 1.3, 2.6}) == doctest::Approx(0.7));
  CHECK(distanceToSurface(box, {0.1, 0.5, 0.2}) == doctest::Approx(0.5));
}

TEST_CASE("what lies in a box is inside, and what lies beside or over it is not") {
  const Mesh box = boxMesh({2, 1, 4});
  CHECK(isInside(box, {0.11, 0.52, 0.23}));
  CHECK(isInside(box, {-0.91, 0.03, 1.93}));
  CHECK_FALSE(isInside(box, {0.11, 1.02, 0.23}));
  CHECK_FALSE(isInside(box, {1.04, 0.52, 0.23}));
}

TEST_CASE("inside also where two closed parts overlap") {
  Mesh both = boxMesh({2, 1, 4});
  const Mesh other = boxMesh({1, 0.8, 1});
  const auto first = static_cast<std::uint32_t>(both.points.size());
  both.points.insert(both.points.end(), other.points.begin(), other.points.end());
  for (const auto& t : other.triangles)
    both.triangles.push_back({t[0] + first, t[1] + first, t[2] + first});
  CHECK(isInside(both, {0.1, 0.3, 0.2}));
  CHECK(isInside(both, {0.9, 0.3, 0.2}));
}

TEST_CASE("who pushes a crate keeps the hands on it and every limb out of it in all variants") {
  const auto stager = Stager::make({{"ada", "ADA", {}, Sex::Female, 1.68, "medium", ""}});
  REQUIRE(stager.has_value());
  Beat beat;
  beat.setting = "interior hold";
  beat.figures = {{"ada", "push", "pushes", "crate"}};
  beat.props = {{"crate", "crate", "box", {1, 1.4, 1}, ""}};
  StageRequest request;
  request.beat = &beat;
  RoughPanel panel;
  panel.outline = polygonOf(Rect{{0, 0}, {96, 80}});
  panel.staging = stager->solved(request, {ShotSize::Long, EyeHeight::Level, 25, 0, false, 0});
  const Scene scene = stager->sceneOf(panel.staging, beat);
  const std::vector<Joint> touching =
      touchingLimbs(beat, scene, 0, stager->solidsOf(panel.staging, beat, 0.5));
  REQUIRE_FALSE(touching.empty());
  const PoseVariants made = poseVariants(*stager, panel, beat, 0, 8);
  CHECK(made.kept.size() >= 3);
  for (const PoseVariant& v : made.kept) {
    INFO(v.name);
    const Skeleton now = stager->sceneOf(v.staging, beat).actors[0].skeleton;
    // A wrist may turn about the palm that stays.
    for (const Joint joint : touching) {
      const MovedPart hand = joint == Joint::LeftWrist ? MovedPart::LeftHand : MovedPart::RightHand;
      const Body& body = *scene.actors[0].body;
      CHECK((placeOf(hand, body, now) - placeOf(hand, body, scene.actors[0].skeleton)).norm() <
            0.02);
    }
    CHECK(v.figures.limbsInside <= made.present.figures.limbsInside + 0.071);
  }
}

}  // namespace tw
