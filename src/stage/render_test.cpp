#include <doctest/doctest.h>
#include <rapidcheck.h>

#include <cmath>
#include <limits>
#include <numbers>

#include "stage/picture.h"
#include "stage/solid_shapes.h"

using namespace tw;

namespace {

Solid ballAt(const Place3& at, double size) {
  return {.mesh = placed(ellipsoidMesh({size, size, size}, 120), at, 0, 0, true)};
}

Camera level(double aspect = 1.5) {
  CameraPlace place;
  place.eye = {0, 0, 0};
  return Camera(place, aspect);
}

double around(int seed, int steps) {
  return static_cast<double>(((seed % steps) + steps) % steps) / steps;
}

}  // namespace

TEST_CASE("a ball's image has the area of the conic it projects to") {
  // Source: closed form. A sphere of radius r with its centre at depth d on the axis is seen as a
  // circle of radius f·r / sqrt(d² − r²) (the tangent cone).
  const double r = 0.5, d = 4, f = 50.0 / 36;
  const int width = 1200;
  const Picture picture = render({ballAt({0, 0, d}, 2 * r)}, level(), width);
  double count = 0;
  for (const auto id : picture.solid) count += id == 0;
  const double radius = f * r / std::sqrt(d * d - r * r) * width;
  CHECK(count == doctest::Approx(std::numbers::pi * radius * radius).epsilon(0.005));
}

TEST_CASE("depth and light are those of the surface in front") {
  const Picture picture =
      render({ballAt({0, 0, 4}, 1), ballAt({0, 0, 6}, 1)}, level(), 301, Vec3(0, 0, -1));
  const std::size_t middle = static_cast<std::size_t>(picture.height / 2) * 301 + 150;
  CHECK(picture.solid[middle] == 0);
  CHECK(picture.depth[middle] == doctest::Approx(3.5).epsilon(1e-3));
  CHECK(picture.light[middle] == doctest::Approx(1).epsilon(1e-2));
  CHECK(picture.depth[0] == std::numeric_limits<float>::infinity());
}

TEST_CASE("a thing that reaches behind the eye is cut at the lens, not smeared") {
  Solid plank{.mesh = placed(boxMesh({0.2, 0.2, 20}), {0, -1, 0}, 0)};
  const Picture picture = render({plank}, level(1), 200);
  int below = 0, above = 0;
  for (int y = 0; y < 200; ++y)
    for (int x = 0; x < 200; ++x)
      (y >= 100 ? below : above) += picture.solid[static_cast<std::size_t>(y) * 200 + x] == 0;
  CHECK(below > 500);
  CHECK(above == 0);
}

TEST_CASE("a thing alone and inside the frame is wholly visible, half of it when half outside") {
  CHECK(visibleShares({ballAt({0, 0, 4}, 1)}, level(), 300)[0] == doctest::Approx(1));
  const double half = 4 * 18.0 / 50;  // the frame's edge at depth 4
  CHECK(visibleShares({ballAt({half, 0, 4}, 0.6)}, level(), 600)[0] ==
        doctest::Approx(0.5).epsilon(0.03));
}

TEST_CASE("a thing behind the camera is not visible") {
  CHECK(visibleShares({ballAt({0, 0, -4}, 1)}, level(), 300)[0] == 0);
}

TEST_CASE("an added occluder never raises visibility") {
  CHECK(rc::check("shares fall or stay", [](int x, int y, int z, int s) {
    std::vector<Solid> scene{ballAt({-0.4, 0, 4}, 0.8), ballAt({0.5, 0.1, 5}, 1.1)};
    const auto before = visibleShares(scene, level(), 160);
    scene.push_back(
        ballAt({around(x, 97) * 3 - 1.5, around(y, 89) * 2 - 1, 1.5 + around(z, 83) * 6},
               0.1 + around(s, 79)));
    const auto after = visibleShares(scene, level(), 160);
    RC_ASSERT(after[0] <= before[0]);
    RC_ASSERT(after[1] <= before[1]);
  }));
}

TEST_CASE("a mirrored scene gives the mirrored picture") {
  const auto scene = [](double sign) {
    return std::vector<Solid>{
        ballAt({sign * -0.4, 0.1, 4}, 0.8),
        {.mesh = placed(boxMesh({0.5, 0.7, 0.3}), {sign * 0.5, -0.5, 5}, sign * 25)}};
  };
  const Picture a = render(scene(1), level(), 300, Vec3(-0.5, 0.8, -0.4));
  const Picture b = render(scene(-1), level(), 300, Vec3(0.5, 0.8, -0.4));
  int unlike = 0;
  for (int y = 0; y < a.height; ++y)
    for (int x = 0; x < a.width; ++x)
      unlike += a.solid[static_cast<std::size_t>(y) * 300 + x] !=
                b.solid[static_cast<std::size_t>(y) * 300 + 299 - x];
  CHECK(unlike <= 4);  // pixel centres that fall exactly on an edge
}

TEST_CASE("the same scene gives the same bytes") {
  const std::vector<Solid> scene{ballAt({-0.4, 0, 4}, 0.8), ballAt({0.5, 0.1, 5}, 1.1)};
  const Picture a = render(scene, level(), 300), b = render(scene, level(), 300);
  CHECK(a.depth == b.depth);
  CHECK(a.solid == b.solid);
  CHECK(a.light == b.light);
}
