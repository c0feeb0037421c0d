#include "stage/shade.h"

#include <doctest/doctest.h>

#include <cmath>
#include <numbers>

#include "geometry/polygon.h"

using namespace tw;

namespace {

Picture emptyPicture(int width, int height) {
  Picture picture;
  picture.width = width;
  picture.height = height;
  picture.solid.assign(static_cast<std::size_t>(width) * height, -1);
  return picture;
}

/// Signed distance to a disc's rim, in pixels, positive inside.
Field disc(const Picture& picture, Point centre, double radius) {
  Field f = fieldOver(wholeOf(picture));
  for (int y = 0; y < f.window.height; ++y)
    for (int x = 0; x < f.window.width; ++x)
      f.value[static_cast<std::size_t>(y) * f.window.width + x] =
          static_cast<float>(radius - std::hypot(x + 0.5 - centre.x, y + 0.5 - centre.y));
  return f;
}

const Camera kCamera(CameraPlace{}, 1.0);

}  // namespace

TEST_CASE("a traced disc has the disc's area and place on the page") {
  const Picture picture = emptyPicture(200, 200);
  const PanelView view{picture, kCamera, Rect{{10, 20}, {110, 120}}};
  const Region r = traced(disc(picture, {80, 110}, 50), view, {.level = 0});
  REQUIRE(r.size() == 1);
  CHECK(area(r) == doctest::Approx(std::numbers::pi * 25 * 25).epsilon(0.01));
  CHECK(std::abs(centroid(r[0]).x - 50) < 0.05);
  CHECK(std::abs(centroid(r[0]).y - 75) < 0.05);
}

TEST_CASE("a ring keeps its hole") {
  const Picture picture = emptyPicture(200, 200);
  const PanelView view{picture, kCamera, Rect{{0, 0}, {100, 100}}};
  Field f = disc(picture, {100, 100}, 60);
  for (float& v : f.value) v = 20 - std::abs(v - 20);
  const Region r = traced(f, view, {.level = 0});
  REQUIRE(r.size() == 2);
  CHECK(area(r) == doctest::Approx(std::numbers::pi * (30 * 30 - 10 * 10)).epsilon(0.01));
}

TEST_CASE("specks are dropped and tones run on to the panel's edge") {
  const Picture picture = emptyPicture(100, 100);
  const PanelView view{picture, kCamera, Rect{{0, 0}, {50, 50}}};
  CHECK(traced(disc(picture, {50, 50}, 2), view, {.level = 0, .leastMm2 = 5}).empty());
  Field full = fieldOver(wholeOf(picture));
  for (float& v : full.value) v = 1;
  const Region all = traced(full, view, {});
  REQUIRE(all.size() == 1);
  CHECK(bounds(all).min.x < 0);
  CHECK(bounds(all).max.y > 50);
}

TEST_CASE("blurring keeps the mean and does not leave its figure") {
  const Picture picture = emptyPicture(60, 40);
  Field f = fieldOver(wholeOf(picture)), in = fieldOver(wholeOf(picture));
  for (std::size_t i = 0; i < f.value.size(); ++i) {
    in.value[i] = i % 60 < 30 ? 1.f : 0.f;
    f.value[i] = i % 60 < 30 ? 1.f : 9.f;
  }
  const Field soft = blurredWithin(f, in, 4);
  CHECK(soft.at(29, 20) == doctest::Approx(1));
  CHECK(blurred(f, 3).at(30, 20) > 1);
}
