#include "geometry/calm_outline.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>

#include "geometry/polygon.h"

namespace tw {

namespace {

/// A circle as pixels of that size show it: every point on the grid, joined by steps.
Polygon stairsOfCircle(Point middle, double radius, double pixel) {
  Polygon out;
  const auto onGrid = [pixel](double v) { return std::round(v / pixel) * pixel; };
  for (const Point& p : ellipse(middle, radius, radius, 720).points) {
    const Point now{onGrid(p.x), onGrid(p.y)};
    if (out.points.empty()) out.points.push_back(now);
    const Point last = out.points.back();
    if (now.x != last.x) out.points.push_back({now.x, last.y});
    if (now.y != last.y) out.points.push_back(now);
  }
  return out;
}

/// The sharpest turn between pieces of the outline, degrees.
double sharpestTurn(const Polygon& outline) {
  double most = 0;
  const auto& p = outline.points;
  for (std::size_t i = 0, n = p.size(); i < n; ++i) {
    const Vector in = p[(i + 1) % n] - p[i], on = p[(i + 2) % n] - p[(i + 1) % n];
    if (in.length() > 1e-9 && on.length() > 1e-9)
      most = std::max(most, std::abs(std::atan2(cross(in, on), dot(in, on))) * 57.2958);
  }
  return most;
}

}  // namespace

TEST_CASE("the stairs of a circle's pixels go and the circle stays") {
  const Point middle{40, 40};
  const Polygon stairs = stairsOfCircle(middle, 15, 0.4), calm = calmOutline(stairs, 1.5);
  CHECK(sharpestTurn(stairs) > 80);
  CHECK(sharpestTurn(calm) < 25);
  for (const Point& p : calm.points) CHECK(std::abs((p - middle).length() - 15) < 0.4);
  CHECK(area(calm) == doctest::Approx(area(ellipse(middle, 15, 15, 720))).epsilon(0.02));
}

TEST_CASE("a long straight side stays where it is and a corner is rounded by half the reach") {
  const Polygon box = polygonOf(Rect{{0, 0}, {60, 40}});
  const Polygon calm = calmOutline(box, 1);
  double nearestToCorner = 100;
  for (const Point& p : calm.points) {
    CHECK(distanceToOutline(box, p) < 0.6);
    if (p.x > 5 && p.x < 55 && p.y < 5) CHECK(std::abs(p.y) < 1e-9);
    nearestToCorner = std::min(nearestToCorner, p.x * p.x + p.y * p.y);
  }
  CHECK(std::sqrt(nearestToCorner) < 0.6);
}

TEST_CASE("what is too small to be calmed and what is no outline stay") {
  const Polygon small = polygonOf(Rect{{0, 0}, {1, 1}});
  CHECK(calmOutline(small, 1).points == small.points);
  CHECK(calmOutline({}, 1).points.empty());
  CHECK(calmOutline(polygonOf(Rect{{0, 0}, {9, 9}}), 0).points.size() == 4);
}

}  // namespace tw
