#include "geometry/triangulate.h"

#include <doctest/doctest.h>
#include <rapidcheck.h>

#include <cmath>
#include <numbers>

namespace tw {
namespace {

double signedArea(const std::vector<Point>& p) {  // the shoelace formula
  double sum = 0;
  for (std::size_t i = 0; i < p.size(); ++i) {
    const Point &a = p[i], &b = p[(i + 1) % p.size()];
    sum += a.x * b.y - b.x * a.y;
  }
  return sum / 2;
}

/// Sum of the triangles' areas; −1 when one is turned the other way.
double coveredArea(const std::vector<Point>& p) {
  double sum = 0;
  for (const auto& t : triangulated(p)) {
    const double one = signedArea({p[t[0]], p[t[1]], p[t[2]]});
    if (one * signedArea(p) < -1e-12) return -1;
    sum += std::abs(one);
  }
  return sum;
}

}  // namespace

TEST_CASE("the triangles of a polygon cover its area by the shoelace formula") {
  const std::vector<std::vector<Point>> shapes{
      {{0, 0}, {1, 0}, {1, 1}, {0, 1}},
      {{0, 0}, {4, 0}, {4, 3}, {3, 3}, {3, 1}, {1, 1}, {1, 3}, {0, 3}},  // a gateway
      {{0, 0}, {2, 1}, {4, 0}, {3, 2}, {4, 4}, {2, 3}, {0, 4}, {1, 2}},  // a star of four points
      {{0, 3}, {0, 0}, {3, 0}, {3, 1}, {2, 1}, {2, 2}, {1, 2}, {1, 3}},  // stairs
      {{0, 0}, {1, 0}, {2, 0}, {2, 2}, {1, 2}, {0, 2}, {0, 1}}};         // corners on one line
  for (std::vector<Point> shape : shapes) {
    CHECK(triangulated(shape).size() == shape.size() - 2);
    CHECK(coveredArea(shape) == doctest::Approx(std::abs(signedArea(shape))));
    std::reverse(shape.begin(), shape.end());
    CHECK(coveredArea(shape) == doctest::Approx(std::abs(signedArea(shape))));
  }
}

TEST_CASE("star-shaped polygons of any sort are covered") {
  CHECK(rc::check("stars", [] {
    const int n = *rc::gen::inRange(3, 40);
    std::vector<Point> star;
    for (int i = 0; i < n; ++i) {
      const double r = *rc::gen::inRange(1, 100), a = 2 * std::numbers::pi * i / n;
      star.push_back({r * std::cos(a), r * std::sin(a)});
    }
    RC_ASSERT(std::abs(coveredArea(star) - std::abs(signedArea(star))) < 1e-6);
  }));
}

TEST_CASE("a polygon that crosses itself or has no area ends with one triangle a corner") {
  CHECK(triangulated({{0, 0}, {1, 1}, {1, 0}, {0, 1}}).size() == 2);
  CHECK(triangulated({{0, 0}, {0, 0}, {0, 0}, {0, 0}, {0, 0}}).size() == 3);
  CHECK(triangulated({{0, 0}, {1, 0}}).empty());
}

}  // namespace tw
