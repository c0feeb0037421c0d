#include <doctest/doctest.h>

#include <cstdlib>

#include "stage/figure.h"

namespace tw {
namespace {

Body bodyFor(Sex sex) {
  Character c;
  c.id = "someone";
  c.sex = sex;
  c.heightM = 1.7;
  return bodyOf(c);
}

}  // namespace

// Winter 2009, Table 4.1 masses on Drillis & Contini heights give 0.575; textbook standing values
// are 0.55 to 0.57 (from memory), so 0.54 to 0.58 is accepted.
TEST_CASE("a standing figure's mass centre lies at 0.54 to 0.58 of its stature") {
  ::setenv("TIERWRIGHT_PRESETS", TIERWRIGHT_SOURCE_DIR "/presets", 0);
  const PoseLibrary poses = PoseLibrary::load().value();
  for (const Sex sex : {Sex::Female, Sex::Male})
    for (const char* name : {"stand", "contrapposto"}) {
      const Body body = bodyFor(sex);
      const double height =
          centreOfMass(body, posed(body, poses.orStand(name), SetFigure{})).y() / body.stature;
      CHECK(height > 0.54);
      CHECK(height < 0.58);
    }
  const Body body = bodyFor(Sex::Male);
  const double upright = centreOfMass(body, posed(body, Pose{}, SetFigure{})).y() / body.stature;
  CHECK(upright == doctest::Approx(0.575).epsilon(0.005));
}

TEST_CASE("the mass centre goes where the figure goes") {
  const Body body = bodyFor(Sex::Female);
  SetFigure there;
  there.at = {2, 0.5, -3};
  const Vec3 moved = centreOfMass(body, posed(body, Pose{}, there)) -
                     centreOfMass(body, posed(body, Pose{}, SetFigure{}));
  CHECK((moved - Vec3(2, 0.5, -3)).norm() < 1e-9);
}

TEST_CASE("a standing figure is balanced: its mass centre lies over its feet") {
  ::setenv("TIERWRIGHT_PRESETS", TIERWRIGHT_SOURCE_DIR "/presets", 0);
  const PoseLibrary poses = PoseLibrary::load().value();
  for (const char* name : {"stand", "contrapposto", "hold", "hold-up", "hands-on-hips",
                           "arms-crossed", "cradle", "write", "look-down", "guard", "point"}) {
    const Body body = bodyFor(Sex::Female);
    const Skeleton s = posed(body, poses.orStand(name), SetFigure{});
    const Vec3 mass = centreOfMass(body, s);
    INFO(name);
    const double edge = 0.5 * body.footBreadth, heel = 0.25 * body.footLength;
    const auto [left, right] = std::minmax({s[Joint::RightToe].x(), s[Joint::RightAnkle].x(),
                                            s[Joint::LeftToe].x(), s[Joint::LeftAnkle].x()});
    const auto [front, back] = std::minmax({s[Joint::RightToe].z(), s[Joint::RightAnkle].z(),
                                            s[Joint::LeftToe].z(), s[Joint::LeftAnkle].z()});
    CHECK(mass.x() > left - edge);
    CHECK(mass.x() < right + edge);
    CHECK(mass.z() > front - heel);
    CHECK(mass.z() < back + heel);
  }
}

}  // namespace tw
