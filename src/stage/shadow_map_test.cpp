#include "stage/shadow_map.h"

#include <doctest/doctest.h>

#include <cmath>

#include "stage/light.h"
#include "stage/rasterise.h"
#include "stage/solid_shapes.h"

using namespace tw;

namespace {

Solid box(const std::array<double, 3>& size, const Place3& at, bool set = false) {
  Solid solid{.mesh = placed(boxMesh(size), at, 0)};
  solid.prop = set ? -1 : 0;
  solid.isSet = set;
  return solid;
}

/// From straight above, far away: the ground as a plan, `perMetre` half-size pixels to the metre.
Camera above() {
  CameraPlace place;
  place.eye = {0, 400, 0};
  place.pitchDeg = -90;
  place.focalMm = 36 * 400 / 8.0;  // the frame is 8 m wide on the ground
  return Camera(place, 1);
}

}  // namespace

TEST_CASE("the ground shadow of a post is as long as height times cotangent says") {
  // Source: plane trigonometry.
  const double high = 1.1, width = 0.1;
  const std::vector<Solid> solids{box({width, high, width}, {0, 0, 0})};
  for (const double elevation : {30.0, 45.0, 60.0}) {
    const double e = elevation * 3.14159265358979 / 180;
    const Vec3 toward(-std::cos(e), std::sin(e), 0);
    const Picture picture = blankPicture(frameViewport(above(), 1600));
    const Field shadow = groundShadow(solids, above(), toward, picture);
    double right = 0;
    for (int y = 0; y < shadow.window.height; ++y)
      for (int x = 0; x < shadow.window.width; ++x)
        if (shadow.at(x, y) > 0) right = std::max(right, shadow.window.x + x + 1.0);
    const double end = (right - 400) / 100;  // metres to the right of the post's middle
    CHECK(end == doctest::Approx(*shadowLength(high, toward) + width / 2).epsilon(0.011));
  }
}

TEST_CASE("a point moved onto the ground lies its shadow's length away") {
  const Vec3 toward = Vec3(0.3, 0.5, -0.4).normalized(), at(1, 1.7, 2);
  const Vec3 ground = onGround(at, toward);
  CHECK(ground.y() == doctest::Approx(0));
  CHECK(std::hypot(ground.x() - at.x(), ground.z() - at.z()) ==
        doctest::Approx(*shadowLength(1.7, toward)));
}

TEST_CASE("the map shades what lies behind a thing along the light, and nothing beside it") {
  const std::vector<Solid> solids{box({1, 1, 1}, {0, 1, 0})};
  const Vec3 toward = Vec3(0, 1, 0);
  const ShadowMap map(solids, toward);
  CHECK(map.isShaded({0.3, 0.5, 0.3}, 0.03));
  CHECK_FALSE(map.isShaded({0.3, 2.5, 0.3}, 0.03));  // above
  CHECK_FALSE(map.isShaded({0.6, 0.5, 0}, 0.03));    // beside
}

TEST_CASE("sets cast no shadows but receive them") {
  const Solid roof = box({4, 0.1, 4}, {0, 3, 0}, true);
  const ShadowMap map({roof, box({0.2, 0.2, 0.2}, {0, 1, 0})}, Vec3(0, 1, 0));
  CHECK_FALSE(map.isShaded({1, 0.5, 1}, 0.03));
  CHECK(map.isShaded({0, 0.5, 0}, 0.03));
}

TEST_CASE("darkening only takes light away, and only from what the lamp does not reach") {
  CameraPlace place;
  place.eye = {0, 1.5, -4};
  const Camera camera(place, 1.4);
  const Solid wall = box({6, 4, 0.1}, {0, 0, 2}, true), thing = box({0.6, 0.6, 0.6}, {0, 1.2, 0});
  const Vec3 toward = Vec3(0, 0.3, -1).normalized();
  const std::vector<Solid> solids{wall, thing};
  Picture lit = render(solids, camera, 200, toward), dark = lit;
  ShadowMap(solids, toward).darken(solids, camera, dark);
  int taken = 0;
  for (std::size_t i = 0; i < lit.light.size(); ++i) {
    CHECK(dark.light[i] <= lit.light[i]);
    taken += dark.light[i] < lit.light[i];
    if (dark.light[i] < lit.light[i]) CHECK(dark.solid[i] == 0);
  }
  CHECK(taken > 50);
}
