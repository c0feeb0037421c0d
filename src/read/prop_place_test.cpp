#include "read/prop_place.h"

#include <doctest/doctest.h>

namespace tw {
namespace {

/// Eye at the origin looking along +z through 36 mm: the picture is as wide as the distance.
CameraPlace plainCamera() {
  CameraPlace camera;
  camera.focalMm = 36;
  return camera;
}

constexpr Rect kPanel{{10, 20}, {110, 120}};

Prop boxOf(double width, double height, double depth) {
  Prop prop;
  prop.sizeM = {width, height, depth};
  return prop;
}

TEST_CASE("a prop ten metres away is seen in a tenth of the picture for each metre") {
  const SetProp set{"crate", {0, 0, 10}, 0, 0, 0};
  const auto box = propPlace(set, boxOf(1, 1, 0), plainCamera(), kPanel);
  REQUIRE(box.has_value());
  // Similar triangles: 1 m at 10 m through a 36 mm lens on a 36 mm frame is a tenth of 100 mm.
  CHECK(box->width() == doctest::Approx(10));
  CHECK(box->height() == doctest::Approx(10));
  CHECK(box->centre().x == doctest::Approx(60));
  CHECK(box->max.y == doctest::Approx(70));
}

TEST_CASE("a held prop hangs about its middle") {
  Prop held = boxOf(1, 1, 0);
  held.heldBy = "mara";
  const auto box = propPlace({"lantern", {0, 0, 10}, 0, 0, 0}, held, plainCamera(), kPanel);
  REQUIRE(box.has_value());
  CHECK(box->centre().y == doctest::Approx(70));
}

TEST_CASE("a quarter turn shows the prop's depth as its width") {
  const SetProp set{"bench", {0, 0, 10}, 90, 0, 0};
  const auto box = propPlace(set, boxOf(0, 1, 2), plainCamera(), kPanel);
  REQUIRE(box.has_value());
  CHECK(box->width() == doctest::Approx(20));
}

TEST_CASE("turning the camera moves the prop to the other side") {
  CameraPlace camera = plainCamera();
  camera.panDeg = 10;
  const SetProp set{"crate", {0, 0, 10}, 0, 0, 0};
  const auto box = propPlace(set, boxOf(0.5, 0.5, 0), camera, kPanel);
  REQUIRE(box.has_value());
  CHECK(box->centre().x < 60);
}

TEST_CASE("what is behind the camera or beside the picture or fills it has no place") {
  const CameraPlace camera = plainCamera();
  CHECK_FALSE(propPlace({"a", {0, 0, -5}, 0, 0, 0}, boxOf(1, 1, 1), camera, kPanel).has_value());
  CHECK_FALSE(propPlace({"a", {40, 0, 10}, 0, 0, 0}, boxOf(1, 1, 1), camera, kPanel).has_value());
  CHECK_FALSE(propPlace({"a", {0, -9, 10}, 0, 0, 0}, boxOf(20, 20, 1), camera, kPanel).has_value());
  CHECK_FALSE(
      propPlace({"chain", {0, 0, 10}, 0, 0, 3}, boxOf(1, 1, 1), camera, kPanel).has_value());
}

}  // namespace
}  // namespace tw
