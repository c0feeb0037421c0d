#include "stage/light.h"

#include <doctest/doctest.h>
#include <rapidcheck.h>

#include <cmath>
#include <numbers>

using namespace tw;

namespace {

Camera camera(double panDeg = 0) {
  CameraPlace place;
  place.eye = {0, 1.5, -4};
  place.panDeg = panDeg;
  return Camera(place, 1.4);
}

Vec3 anyDirection() {
  const double turn = *rc::gen::inRange(0, 360) * std::numbers::pi / 180;
  const double high = *rc::gen::inRange(-89, 90) * std::numbers::pi / 180;
  return {std::cos(turn) * std::cos(high), std::sin(high), std::sin(turn) * std::cos(high)};
}

Lighting onlyKey() {
  Lighting light;
  light.fill.strength = light.rim.strength = light.ambient = 0;
  return light;
}

}  // namespace

TEST_CASE("a surface gets the cosine of its angle to the lamp, and nothing when turned away") {
  // Source: Lambert's cosine law.
  Lighting light = onlyKey();
  light.key.from = {0, 1, 0};
  for (const double deg : {0.0, 30.0, 60.0, 85.0, 90.0, 120.0, 180.0}) {
    const double a = deg * std::numbers::pi / 180;
    const Vec3 normal(std::sin(a), std::cos(a), 0);
    CHECK(illuminance(light, camera(), normal) ==
          doctest::Approx(std::max(0.0, std::cos(a))).epsilon(1e-12));
  }
}

TEST_CASE("adding light never darkens, a cast shadow never lightens") {
  CHECK(rc::check("any lamp added to any light", [] {
    Lighting light;
    light.key.from = anyDirection();
    const Vec3 normal = anyDirection();
    const double before = illuminance(light, camera(), normal);
    Lighting more = light;
    more.rim = {anyDirection(), *rc::gen::inRange(0, 40) / 10.0};
    RC_ASSERT(illuminance(more, camera(), normal) >= before);
    RC_ASSERT(illuminance(light, camera(), normal, 0) <= before);
  }));
}

TEST_CASE("lamps turn with the camera and keep their height") {
  const Lamp lamp;
  for (const double pan : {0.0, 40.0, 180.0}) {
    const Vec3 d = towardLamp(lamp, camera(pan));
    CHECK(d.norm() == doctest::Approx(1));
    CHECK(d.y() == doctest::Approx(lamp.from.y() / lamp.from.norm()));
    CHECK((camera(pan).rotation() * d).x() < 0);  // over the left shoulder
  }
}

TEST_CASE("a shadow on flat ground is height times the cotangent of the light's elevation") {
  // Source: plane trigonometry; the shadow of a gnomon.
  for (const double deg : {15.0, 30.0, 45.0, 60.0, 89.0}) {
    const double e = deg * std::numbers::pi / 180;
    const Vec3 toward(std::cos(e) * 0.6, std::sin(e), std::cos(e) * 0.8);
    CHECK(*shadowLength(1.75, toward) == doctest::Approx(1.75 / std::tan(e)).epsilon(1e-12));
  }
  CHECK_FALSE(shadowLength(1.75, {1, 0, 0}));
}

TEST_CASE("the script's words choose the light, the panel's before the scene's") {
  const auto lights = LightWords::load();
  REQUIRE(lights.has_value());
  Beat beat;
  beat.setting = "exterior the boat - dusk";
  CHECK(lights->lightFor(beat).name == "low");
  beat.description = "INES stands in silhouette at the rail.";
  CHECK(lights->lightFor(beat).name == "back");
  beat.setting = "exterior quay";
  beat.description = "TEO by lantern light, his face Lit From Below.";
  CHECK(lights->lightFor(beat).name == "below");
  beat.description = "Ines knights a moonlighter.";  // no word of light, only letters of some
  CHECK(lights->lightFor(beat).name == "shoulder");
}

TEST_CASE("a light that cannot be is refused with its place in the file") {
  const auto read = LightWords::read(
      R"({"lights": [{"name": "a", "title": "b", "key": {"from": [0, 0, 0], "strength": -1}}]})",
      "light.json");
  REQUIRE_FALSE(read.has_value());
  CHECK(read.error().size() == 2);
  CHECK_FALSE(LightWords::read("[]", "light.json").has_value());
}
