#include "stage/light_moves.h"

#include <doctest/doctest.h>
#include <rapidcheck.h>

#include <cmath>

namespace tw {
namespace {

double anyOf(double least, double most) {
  return least + (most - least) * *rc::gen::inRange(0, 10001) / 10000.0;
}

double apart(const Place3& a, const Place3& b) {
  return std::hypot(a.x - b.x, a.y - b.y, a.z - b.z);
}

}  // namespace

// Worked by hand: 90° off the camera's axis is half way out, 180° at the edge.
TEST_CASE("the disc's middle is light from the camera and its half way light from the side") {
  CHECK(apart(fromLightDisc({0, 0}), {0, 0, 1}) < 1e-6);
  CHECK(apart(fromLightDisc({0.5, 0}), {1, 0, 0}) < 1e-6);
  CHECK(apart(fromLightDisc({0, 0.5}), {0, 1, 0}) < 1e-6);
  CHECK(apart(fromLightDisc({-1, 0}), {0, 0, -1}) < 1e-6);
  CHECK(apart(fromLightDisc({0.25, 0}), {std::sqrt(0.5), 0, std::sqrt(0.5)}) < 1e-6);
}

TEST_CASE("a direction laid on the disc and taken back is the same") {
  CHECK(rc::check("disc and back", [] {
    const double angle = anyOf(0, 6.283), out = anyOf(0, 0.98);
    const Point on{out * std::cos(angle), out * std::sin(angle)};
    const Place3 from = fromLightDisc(on);
    RC_ASSERT(std::abs(std::hypot(from.x, from.y, from.z) - 1) < 1e-5);
    const Point back = onLightDisc(from);
    RC_ASSERT(std::hypot(back.x - on.x, back.y - on.y) < 1e-4);
  }));
}

TEST_CASE("one lamp moved or strengthened leaves the others as they were") {
  const SetLight light = setLightOf(Lighting{});
  const SetLight moved = withLampFrom(light, LampName::Key, {0.3, 0.4});
  CHECK(moved.fill == light.fill);
  CHECK(moved.rim == light.rim);
  CHECK(moved.key.strength == light.key.strength);
  CHECK(moved.ambient == light.ambient);
  CHECK(moved.name == "own");
  const SetLight strong = withLampStrength(light, LampName::Rim, 9);
  CHECK(strong.rim.strength == kMostLampStrength);
  CHECK(strong.key == light.key);
  CHECK(withAmbient(light, -1).ambient == 0);
}

TEST_CASE("a light set by hand is read back as it was set") {
  const SetLight light = withLampStrength(
      withLampFrom(setLightOf(Lighting{}), LampName::Fill, {-0.6, 0.1}), LampName::Fill, 0.35);
  CHECK(setLightOf(lightingOf(light)) == light);
}

TEST_CASE("back to the words is the light that the beat names") {
  const auto known = LightWords::load();
  REQUIRE(known.has_value());
  Beat beat;
  beat.description = "Ada stands against the light, back-lit.";
  const SetLight words = wordsLight(beat, *known);
  CHECK(words == setLightOf(lightOf(beat, *known)));
  CHECK(withLampFrom(words, LampName::Key, {0, 0}) != words);
}

TEST_CASE("directions are said in words") {
  CHECK(directionInWords({0, 0, 1}) == "from the front");
  CHECK(directionInWords({-0.7, 0.7, 0.1}) == "from the left and above");
  CHECK(directionInWords({0.6, 0.2, -0.77}) == "from the right, behind");
}

}  // namespace tw
