#include "stage/held_props.h"

#include <doctest/doctest.h>

#include "stage/prop_mesh.h"
#include "stage/shipped_presets.h"

namespace tw {
namespace {

Beat withLantern(const std::string& pose, const std::string& hand) {
  Beat beat;
  beat.id = "p1-1";
  beat.setting = "exterior";
  beat.figures = {{"ada", pose, "holds", "lantern"}};
  beat.props = {{"lantern", "lantern", "cylinder", {0.18, 0.34, 0.18}, "ada", hand}};
  return beat;
}

Scene sceneFor(const Beat& beat, bool mirrored, double sideDeg = 0) {
  Cast cast;
  cast.bodies["ada"] = bodyOf({"ada", "ADA"});
  StageRequest request;
  request.beat = &beat;
  StagingChoice choice;
  choice.mirrored = mirrored;
  choice.sideDeg = sideDeg;
  return blocked(request, choice, cast, shippedPoses());
}

/// How far aside of a hand's palm the first thing hangs.
double asideOf(const Scene& scene, bool left) {
  const Skeleton& s = scene.actors[0].skeleton;
  const Vec3& wrist = s[left ? Joint::LeftWrist : Joint::RightWrist];
  const Vec3& tip = s[left ? Joint::LeftFingertip : Joint::RightFingertip];
  const Vec3 palm = wrist + 0.6 * (tip - wrist);
  return std::hypot(scene.props[0].at.x - palm.x(), scene.props[0].at.z - palm.z());
}

TEST_CASE("a thing is in the hand that is named whichever way the picture runs") {
  for (const char* pose : {"stand", "hold-up", "walk", "kneel"})
    for (const bool mirrored : {false, true})
      for (const bool left : {false, true}) {
        CAPTURE(pose);
        CAPTURE(mirrored);
        const Scene scene = sceneFor(withLantern(pose, left ? "left" : "right"), mirrored);
        CHECK(asideOf(scene, left) < 0.01);
        CHECK(asideOf(scene, !left) > 0.1);
      }
}

TEST_CASE("who holds something up raises the hand that is named") {
  for (const bool mirrored : {false, true})
    for (const bool left : {false, true}) {
      const Scene scene = sceneFor(withLantern("hold-up", left ? "left" : "right"), mirrored);
      const Skeleton& s = scene.actors[0].skeleton;
      const double rise = s[Joint::LeftWrist].y() - s[Joint::RightWrist].y();
      CHECK((left ? rise : -rise) > 0.3);
    }
}

TEST_CASE("a thing in both hands is between the palms") {
  Beat beat = withLantern("stand", "both");
  const Scene scene = sceneFor(beat, false);
  const Skeleton& s = scene.actors[0].skeleton;
  const double middle = (s[Joint::LeftFingertip].x() + s[Joint::RightFingertip].x()) / 2;
  CHECK(scene.props[0].at.x == doctest::Approx(middle).epsilon(0.05));
  const BusyHands busy = busyHands(beat, scene, 0);
  CHECK((busy.left && busy.right));
}

TEST_CASE("of two things each hand holds one") {
  Beat beat = withLantern("stand", "");
  beat.props.push_back({"knife", "knife", "box", {0.05, 0.3, 0.02}, "ada"});
  const BusyHands busy = busyHands(beat, sceneFor(beat, false), 0);
  CHECK((busy.left && busy.right));
  beat.props[1].hand = "left";
  const Scene scene = sceneFor(beat, false);
  CHECK(asideOf(scene, false) < 0.01);
}

TEST_CASE("a thing with a place stands there in nobody's hand and the mirror moves it") {
  Beat beat = withLantern("stand", "left");
  beat.props[0].placeM = {1.5, 0.4, 2};
  beat.props[0].turnDeg = 30;
  const Scene scene = sceneFor(beat, false), glass = sceneFor(beat, true);
  CHECK(scene.props[0].at == Place3{1.5, 0.4, 2});
  CHECK(scene.props[0].headingDeg == 30);
  CHECK(glass.props[0].at == Place3{-1.5, 0.4, 2});
  CHECK(glass.props[0].headingDeg == -30);
  CHECK_FALSE(isInHand(beat, 0));
}

TEST_CASE("a fallen bell lies on the floor and an upright one hangs") {
  Beat beat;
  beat.setting = "interior";
  beat.description = "Ada hauls on the chain, taut to the fallen bell.";
  beat.figures = {{"ada", "pull", "pulls", "chain"}};
  beat.props = {{"chain", "chain", "cylinder", {0.08, 3, 0.08}, "ada"},
                {"bell", "bell", "cone", {1.6, 1.7, 1.6}}};
  for (const bool mirrored : {false, true}) {
    const Scene scene = sceneFor(beat, mirrored);
    const Mesh bell = propMesh(beat.props[1], scene.props[1], false, 1);
    double low = 9, high = -9;
    for (const Vec3& p : bell.points) low = std::min(low, p.y()), high = std::max(high, p.y());
    CHECK(low == doctest::Approx(0));
    CHECK(high < 1.7);  // on its side
  }
  beat.description = "Ada hauls on the chain below the bell.";
  CHECK(sceneFor(beat, false).props[1].at.y > 1);  // hangs
}

}  // namespace
}  // namespace tw
