#include "stage/camera_moves.h"

#include <cmath>

#include "stage/staged_panel_test.h"

namespace tw {
namespace {

Vec3 eyeOf(const CameraPlace& camera) {
  return {camera.eye.x, camera.eye.y, camera.eye.z};
}
Point seen(const CameraPlace& camera, const Vec3& at) {
  return Camera(camera, panelOfTwo().aspect()).projectAlways(at);
}
Vec3 pivotIn(const Staging& staging) {
  return pivotOf(panelOfTwo().sceneOf(staging));
}

}  // namespace

TEST_CASE("an orbit keeps the distance to its pivot and the pivot's place in the frame") {
  CHECK(rc::check("orbit", [] {
    const Staging staging = anyStaging();
    const Vec3 pivot = pivotIn(staging);
    const CameraPlace now = orbited(staging.camera, pivot, anyOf(-170, 170), anyOf(-80, 80));
    const double was = (eyeOf(staging.camera) - pivot).norm();
    RC_ASSERT(std::abs((eyeOf(now) - pivot).norm() - was) < 1e-9);
    RC_ASSERT((seen(now, pivot) - seen(staging.camera, pivot)).length() < 1e-9);
    RC_ASSERT(now.eye.y >= std::min(kLowestEyeM, staging.camera.eye.y) - 1e-6);
    RC_ASSERT(std::abs(now.pitchDeg) <= kSteepestPitchDeg);
  }));
}

TEST_CASE("an orbit to the left and up brings the eye there") {
  const CameraPlace front{{0, 1.5, -4}, 0, 0, 0, 50, 0, 0};
  const Vec3 pivot(0, 1.5, 0);
  const CameraPlace left = orbited(front, pivot, 90, 0);
  CHECK(left.eye.x == doctest::Approx(-4));
  CHECK(left.eye.z == doctest::Approx(0));
  CHECK(left.panDeg == doctest::Approx(90));
  const CameraPlace above = orbited(front, pivot, 0, 30);
  CHECK(above.eye.y == doctest::Approx(1.5 + 4 * std::sin(30 * 3.14159265 / 180)));
  CHECK(above.pitchDeg == doctest::Approx(-30));
}

TEST_CASE("a dolly keeps the pivot's place and multiplies the distance within its limits") {
  CHECK(rc::check("dolly", [] {
    const Staging staging = anyStaging();
    const Vec3 pivot = pivotIn(staging);
    const double times = anyOf(0.5, 3);
    const CameraPlace now = dollied(staging.camera, pivot, times);
    RC_ASSERT((seen(now, pivot) - seen(staging.camera, pivot)).length() < 1e-9);
    if (now.eye.y > kLowestEyeM + 1e-6)
      RC_ASSERT(std::abs((eyeOf(now) - pivot).norm() / (eyeOf(staging.camera) - pivot).norm() -
                         times) < 1e-9);
  }));
  const CameraPlace close = dollied({{0, 1.5, -4}, 0, 0, 0, 50, 0, 0}, {0, 1.5, 0}, 0.0001);
  CHECK(close.eye.z == doctest::Approx(-kNearestPivotM));
}

TEST_CASE("a lens that keeps the focus changes the head's height by less than 1 per cent") {
  CHECK(rc::check("dolly zoom", [] {
    const Staging staging = anyStaging();
    const Scene scene = panelOfTwo().sceneOf(staging);
    const Skeleton& s = scene.actors[0].skeleton;
    const double lens = anyOf(kShortestLensMm, kLongestLensMm);
    const double aspect = panelOfTwo().aspect();
    const CameraPlace now =
        withLensKeeping(staging.camera, lens, s[Joint::Chin], s[Joint::Crown], aspect);
    RC_PRE(now.eye.y > kLowestEyeM + 1e-6);
    const auto high = [&](const CameraPlace& c) {
      return (seen(c, s[Joint::Chin]) - seen(c, s[Joint::Crown])).length();
    };
    RC_ASSERT(std::abs(high(now) / high(staging.camera) - 1) < 0.01);
    const Vec3 middle = (s[Joint::Chin] + s[Joint::Crown]) / 2;
    RC_ASSERT((seen(now, middle) - seen(staging.camera, middle)).length() < 0.002);
    RC_ASSERT(std::abs(now.focalMm - lens) < 1e-9);
  }));
}

TEST_CASE("lens and roll stop at the limits of the brief") {
  const CameraPlace camera;
  CHECK(withLens(camera, 3).focalMm == kShortestLensMm);
  CHECK(withLens(camera, 900).focalMm == kLongestLensMm);
  CHECK(rolled(camera, 120).rollDeg == kMostRollDeg);
  CHECK(rolled(rolled(camera, 30), -30).rollDeg == 0);
}

TEST_CASE("a fitted picture has every place where the fit puts it") {
  CHECK(rc::check("fit by lens and shift", [] {
    const Staging staging = anyStaging();
    const StagedPanel& panel = panelOfTwo();
    Fit fit;
    fit.scale = anyOf(0.6, 1.8);
    fit.move = {anyOf(-60, 60), anyOf(-60, 60)};
    const auto now = fitted(staging.camera, panel.frame, fit);
    RC_PRE(now.has_value());
    Staging after = staging;
    after.camera = *now;
    const std::vector<Handle> was = handlesOf(panel, staging), is = handlesOf(panel, after);
    for (std::size_t i = 0; i < was.size(); ++i)
      if (!was[i].behindEye) RC_ASSERT((is[i].page - fit.placed(was[i].page)).length() < 1e-6);
  }));
  Fit turnedAbout;
  turnedAbout.scale = 1;
  turnedAbout.mirrored = true;
  CHECK_FALSE(fitted(plainStaging().camera, panelOfTwo().frame, turnedAbout).has_value());
}

TEST_CASE("the pivot goes as far in the frame as the camera is trucked") {
  CHECK(rc::check("truck", [] {
    const Staging staging = anyStaging();
    const Vec3 pivot = pivotIn(staging);
    const Vector by{anyOf(-0.3, 0.3), anyOf(-0.1, 0.05)};
    const CameraPlace now = trucked(staging.camera, pivot, by, panelOfTwo().aspect());
    RC_PRE(now.eye.y > kLowestEyeM + 1e-6);
    const Vector way = seen(now, pivot) - seen(staging.camera, pivot);
    RC_ASSERT((way - by).length() < 1e-9);
    RC_ASSERT(now.panDeg == staging.camera.panDeg);
  }));
}

TEST_CASE("raised the pivot keeps its place and by a shift uprights keep their slant") {
  CHECK(rc::check("rise", [] {
    const Staging staging = anyStaging();
    const Vec3 pivot = pivotIn(staging);
    const double aspect = panelOfTwo().aspect(), metres = anyOf(-0.8, 0.8);
    for (const RiseBy by : {RiseBy::Tilt, RiseBy::Shift}) {
      const CameraPlace now = raised(staging.camera, pivot, metres, by, aspect);
      RC_ASSERT((seen(now, pivot) - seen(staging.camera, pivot)).length() < 1e-6);
      if (by == RiseBy::Shift) RC_ASSERT(now.pitchDeg == staging.camera.pitchDeg);
    }
  }));
}

TEST_CASE("seen by another camera nobody and nothing in the panel moves") {
  CHECK(rc::check("only the camera", [] {
    const Staging staging = anyStaging();
    const CameraPlace camera =
        rolled(orbited(staging.camera, pivotIn(staging), anyOf(-170, 170), anyOf(-20, 20)), 5);
    const Staging now = seenBy(panelOfTwo(), staging, camera);
    RC_ASSERT(now.figures == staging.figures);
    RC_ASSERT(now.props == staging.props);
    RC_ASSERT(now.light == staging.light);
    RC_ASSERT(now.choice.mirrored == staging.choice.mirrored);
    // Else the whole set would be turned about.
    RC_ASSERT(runsLeftward(now) == runsLeftward(staging));
  }));
}

TEST_CASE("the choice follows the camera so that cards name what is seen") {
  const Staging staging = stagingOfTwo({ShotSize::Long, EyeHeight::Level, 20, 0, false, 0});
  const Vec3 pivot = pivotIn(staging);
  CHECK(seenBy(panelOfTwo(), staging, staging.camera) == staging);
  const Staging close = seenBy(panelOfTwo(), staging, dollied(staging.camera, pivot, 0.25));
  CHECK(close.choice.shot < ShotSize::MediumLong);
  CHECK(close.choice.lensMm == staging.choice.lensMm);
  const Staging high = seenBy(panelOfTwo(), staging, orbited(staging.camera, pivot, 0, 45));
  CHECK(high.choice.eye == EyeHeight::Bird);
  const Staging wide = seenBy(panelOfTwo(), staging, withLens(staging.camera, 21));
  CHECK(wide.choice.lensMm == 21);
}

TEST_CASE("a staging solved by the choice that followed an orbit stands near that camera") {
  const Staging staging = stagingOfTwo({ShotSize::Long, EyeHeight::Level, 20, 0, false, 0});
  const Staging moved =
      seenBy(panelOfTwo(), staging, orbited(staging.camera, pivotIn(staging), -30, 0));
  const Staging again = stagingOfTwo(moved.choice);
  CHECK(again.camera.panDeg == doctest::Approx(moved.camera.panDeg).epsilon(0.05));
}

}  // namespace tw
