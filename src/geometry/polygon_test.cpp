#include "geometry/polygon.h"

#include <doctest/doctest.h>
#include <rapidcheck.h>

#include <algorithm>
#include <numbers>

#include "geometry/drawing.h"

namespace tw {

namespace {

const Polygon kUnit = polygonOf({{0, 0}, {1, 1}});

Polygon randomStar(Point centre) {
  Polygon out;
  const int corners = *rc::gen::inRange(3, 12);
  for (int i = 0; i < corners; ++i) {
    const double r = *rc::gen::inRange(10, 100) / 10.0;
    const double a = 2 * std::numbers::pi * i / corners;
    out.points.push_back({centre.x + r * std::cos(a), centre.y + r * std::sin(a)});
  }
  return out;
}

}  // namespace

// Closed forms of elementary geometry.
TEST_CASE("area and centroid of simple outlines equal their closed forms") {
  CHECK(area(kUnit) == doctest::Approx(1));
  const Polygon triangle{{{0, 0}, {6, 0}, {0, 3}}};
  CHECK(area(triangle) == doctest::Approx(9));
  CHECK(centroid(triangle).x == doctest::Approx(2));
  CHECK(centroid(triangle).y == doctest::Approx(1));
  CHECK(area(ellipse({5, 5}, 2, 1, 720)) == doctest::Approx(2 * std::numbers::pi).epsilon(1e-4));
}

TEST_CASE("a hull is convex and holds every point") {
  CHECK(rc::check("hull", [] {
    std::vector<Point> points;
    for (int i = *rc::gen::inRange(3, 40); i > 0; --i)
      points.push_back({*rc::gen::inRange(0, 1000) / 7.0, *rc::gen::inRange(0, 1000) / 7.0});
    const Polygon h = hull(points);
    if (h.points.size() < 3) return;
    RC_ASSERT(isConvex(h));
    for (const Point& p : points) RC_ASSERT(contains(h, p) || distanceToOutline(h, p) < 1e-9);
  }));
}

TEST_CASE("common, without and united areas add up") {
  CHECK(rc::check("inclusion and exclusion", [] {
    const Polygon a = randomStar({0, 0});
    const Polygon b = randomStar({*rc::gen::inRange(-80, 80) / 10.0, 3});
    const double both = area(common({a}, {b}));
    RC_ASSERT(std::abs(area(a) - both - area(without({a}, {b}))) < 1e-2);
    RC_ASSERT(std::abs(area(united({a, b})) - (area(a) + area(b) - both)) < 1e-2);
  }));
}

TEST_CASE("united takes outlines of either orientation") {
  Polygon back = kUnit;
  std::reverse(back.points.begin(), back.points.end());
  CHECK(area(united({kUnit, moved(back, {0.5, 0})})) == doctest::Approx(1.5));
}

// Steiner's formula for a convex shape: area + perimeter·r + pi·r².
TEST_CASE("growing a square by r follows Steiner's formula") {
  CHECK(area(offset({kUnit}, 0.5)) ==
        doctest::Approx(1 + 4 * 0.5 + std::numbers::pi * 0.25).epsilon(0.01));
  CHECK(area(offset({kUnit}, -0.25)) == doctest::Approx(0.25));
}

TEST_CASE("a ray reports the distance to the first outline it meets") {
  CHECK(*firstHit({{-2, 0.5}, {5, 0}}, kUnit) == doctest::Approx(2));
  CHECK(*firstHit({{0.5, 0.5}, {0, -1}}, kUnit) == doctest::Approx(0.5));
  CHECK_FALSE(firstHit({{-2, 0.5}, {-1, 0}}, kUnit).has_value());
}

TEST_CASE("a simplified line stays within its tolerance and keeps its ends") {
  std::vector<Point> line;
  for (int i = 0; i <= 100; ++i) line.push_back({i * 0.1, std::sin(i * 0.1)});
  const auto fewer = simplified(line, 0.01);
  CHECK(fewer.size() < 40);
  CHECK(fewer.front() == line.front());
  CHECK(fewer.back() == line.back());
  Polygon thin{fewer};
  for (const Point& p : line) CHECK(distanceToOutline(thin, p) <= 0.0101);
}

TEST_CASE("the outline of an even stroke is as large as its length times its width and a cap") {
  const Stroke stroke{{{0, 0}, {5, 0}, {10, 0}}, {1, 1, 1}, 1};
  CHECK(area(outlineOf(stroke)) == doctest::Approx(10 + std::numbers::pi / 4).epsilon(0.01));
}

TEST_CASE("bounds take in every outline of a region, and of nothing are a point at the origin") {
  const Region both{kUnit, moved(kUnit, {-3, 5})};
  CHECK(bounds(both) == Rect{{-3, 0}, {1, 6}});
  CHECK(bounds(Region{}) == Rect{});
}

TEST_CASE("a point in a hole is outside the region") {
  const Region ring{polygonOf({{0, 0}, {9, 9}}), polygonOf({{3, 3}, {6, 6}})};
  CHECK(contains(ring, {1, 1}));
  CHECK_FALSE(contains(ring, {4, 4}));
}

TEST_CASE("a notch makes an outline concave, either way round and corners in line do not") {
  Polygon notched{{{0, 0}, {4, 0}, {4, 4}, {2, 1}, {0, 4}}};
  CHECK_FALSE(isConvex(notched));
  std::reverse(notched.points.begin(), notched.points.end());
  CHECK_FALSE(isConvex(notched));
  CHECK(isConvex(Polygon{{{0, 0}, {2, 0}, {4, 0}, {4, 4}, {0, 4}}}));
  CHECK_FALSE(isConvex(Polygon{{{0, 0}, {1, 1}}}));
}

TEST_CASE("outlines without area still have a middle and a hull") {
  const Polygon line{{{0, 0}, {4, 0}, {2, 0}}};
  CHECK(centroid(line) == Point{2, 0});
  CHECK(hull({{1, 1}, {1, 1}}).points.size() == 1);
  CHECK(hull({}).points.empty());
}

TEST_CASE("a stroke of one point is a dot of its width, of none nothing") {
  const Rect dot = bounds(outlineOf({{{5, 5}}, {2}, 1}));
  CHECK(dot.width() == doctest::Approx(2));
  CHECK(dot.centre().x == doctest::Approx(5));
  CHECK(outlineOf({}).points.empty());
}

}  // namespace tw
