#include <doctest/doctest.h>
#include <rapidcheck.h>

#include <algorithm>
#include <numbers>
#include <polyclipping/clipper.hpp>

#include "geometry/fit_largest.h"
#include "geometry/fit_pieces.h"
#include "geometry/polygon.h"

namespace tw {

namespace {

const Polygon kSquare{{{0, 0}, {1, 0}, {1, 1}, {0, 1}}};
const double kRoot3 = std::sqrt(3.0);

Polygon regular(int corners, double radius, double turn = 0) {
  Polygon out;
  for (int i = 0; i < corners; ++i) {
    const double a = turn + 2 * std::numbers::pi * i / corners;
    out.points.push_back({radius * std::cos(a), radius * std::sin(a)});
  }
  return out;
}

Fit fit(const Polygon& figure, const Polygon& region, double margin = 0, bool mirror = false) {
  return largestFit(
      {.figure = {figure}, .region = {region}, .margin = margin, .mayMirror = mirror});
}

/// How much of the placed figure lies outside the region, of its own area. Judged by Clipper.
double outsideShare(const Polygon& figure, const Region& region, const Fit& f) {
  const Polygon placed = f.placed(figure);
  return area(without({placed}, region)) / area(placed);
}

ClipperLib::Path gridPath(const Polygon& polygon, double scale) {
  ClipperLib::Path out;
  for (const Point& p : polygon.points)
    out.emplace_back(std::llround(p.x * scale * 1e5), std::llround(p.y * scale * 1e5));
  return out;
}

/// Second judge: does any move put the figure at that scale into the region? By Clipper's Minkowski
/// sum of the outlines: a move is free when the outlines do not cross and the figure is inside,
/// and all moves of one face of what the sum leaves are alike. Moves on the sum's own outline
/// (exact fits) do not count, so ask a little below or above.
bool someMoveFits(const Polygon& figure, const Polygon& region, double scale) {
  ClipperLib::Path opposite = gridPath(figure, -scale);
  ClipperLib::Paths crossing;
  ClipperLib::MinkowskiSum(opposite, gridPath(region, 1), crossing, true);
  ClipperLib::Clipper all;
  all.AddPaths(crossing, ClipperLib::ptSubject, true);
  ClipperLib::PolyTree faces;
  all.Execute(ClipperLib::ctUnion, faces, ClipperLib::pftNonZero);
  for (const ClipperLib::PolyNode* n = faces.GetFirst(); n != nullptr; n = n->GetNext()) {
    if (!n->IsHole()) continue;
    // A place inside the face: the middle of its roundest convex piece.
    Polygon face;
    for (const auto& p : n->Contour)
      face.points.push_back({static_cast<double>(p.X) / 1e5, static_cast<double>(p.Y) / 1e5});
    const auto pieces = convexPieces(face);
    const auto roundest =
        std::max_element(pieces.begin(), pieces.end(),
                         [](const Polygon& a, const Polygon& b) { return area(a) < area(b); });
    if (roundest == pieces.end()) continue;
    const Point middle = centroid(*roundest);
    Fit at;
    at.scale = scale;
    at.move = middle - Point{};
    if (outsideShare(figure, {region}, at) < 1e-3) return true;
  }
  return false;
}

Polygon largestOf(const Region& region) {
  return *std::max_element(region.begin(), region.end(),
                           [](const Polygon& a, const Polygon& b) { return area(a) < area(b); });
}

Polygon arbitraryStar(double least) {
  const int corners = *rc::gen::inRange(3, 10);
  Polygon out;
  for (int i = 0; i < corners; ++i) {
    const double r = least + *rc::gen::inRange(0, 1000) / 1000.0 * (10 - least);
    const double a = 2 * std::numbers::pi * i / corners;
    out.points.push_back({r * std::cos(a), r * std::sin(a)});
  }
  return out;
}

Polygon arbitraryConvex() {
  return hull(arbitraryStar(4).points);
}

/// A C: neither convex nor star-shaped.
Polygon arbitraryC() {
  const double thick = *rc::gen::inRange(10, 30) / 10.0, gap = *rc::gen::inRange(10, 40) / 10.0;
  return {{{0, 0},
           {8, 0},
           {8, thick},
           {thick, thick},
           {thick, thick + gap},
           {8, thick + gap},
           {8, 2 * thick + gap},
           {0, 2 * thick + gap}}};
}

Polygon arbitraryFigure() {
  switch (*rc::gen::inRange(0, 3)) {
    case 0:
      return arbitraryConvex();
    case 1:
      return arbitraryStar(2);
    default:
      return arbitraryC();
  }
}

/// Somebody's outline: head, trunk and four bent limbs at any angles, joined.
Polygon arbitraryPerson() {
  const auto angle = [](int from, int to) { return *rc::gen::inRange(from, to) / 57.3; };
  const auto limb = [](Point a, Point b, double thick) {
    Polygon one = ellipse(a, thick, thick, 8), other = ellipse(b, thick, thick, 8);
    one.points.insert(one.points.end(), other.points.begin(), other.points.end());
    return hull(one.points);
  };
  const auto to = [](Point from, double length, double turn) {
    return from + Vector{std::sin(turn), std::cos(turn)} * length;
  };
  std::vector<Polygon> parts{ellipse({0, 0.5}, 0.5, 0.6, 8), limb({0, 1.6}, {0, 3.4}, 0.6)};
  for (const double side : {-1.0, 1.0}) {
    const Point shoulder{0.5 * side, 1.5}, hip{0.3 * side, 3.6};
    const Point elbow = to(shoulder, 1.4, side * angle(0, 170));
    const Point knee = to(hip, 1.9, side * angle(-10, 80));
    parts.push_back(limb(shoulder, elbow, 0.25));
    parts.push_back(limb(elbow, to(elbow, 1.5, side * angle(0, 180)), 0.2));
    parts.push_back(limb(hip, knee, 0.35));
    parts.push_back(limb(knee, to(knee, 2, side * angle(-60, 60)), 0.25));
  }
  return largestOf(united(parts));
}

/// A panel with one to three others lying on its border.
Polygon arbitraryPanel() {
  const double wide = *rc::gen::inRange(8, 14), high = *rc::gen::inRange(8, 14);
  Region left{polygonOf(Rect{{0, 0}, {wide, high}})};
  const int insets = *rc::gen::inRange(1, 4);
  for (int i = 0; i < insets; ++i) {
    const double w = wide * *rc::gen::inRange(15, 45) / 100,
                 h = high * *rc::gen::inRange(15, 45) / 100;
    const bool right = *rc::gen::arbitrary<bool>();
    const double y = (high - h) * *rc::gen::inRange(0, 101) / 100;
    const double x = right ? wide - w : 0;
    left = without(left, {polygonOf(Rect{{x, y}, {x + w, y + h}})});
  }
  return largestOf(left);
}

}  // namespace

// Closed forms, derived by hand: ab/(a+b), √3/(2+√3), 3−√3, the incircle, the hull's height.
TEST_CASE("largest fits in convex regions equal their closed forms") {
  const Polygon triangle{{{0, 0}, {4, 0}, {0, 3}}};
  CHECK(fit(kSquare, triangle).scale == doctest::Approx(12.0 / 7).epsilon(1e-9));
  const Polygon equilateral{{{0, 0}, {1, 0}, {0.5, kRoot3 / 2}}};
  CHECK(fit(kSquare, equilateral).scale == doctest::Approx(kRoot3 / (2 + kRoot3)).epsilon(1e-9));
  const Polygon hexagon = regular(6, 1);
  CHECK(fit(kSquare, hexagon).scale == doctest::Approx(3 - kRoot3).epsilon(1e-9));
  CHECK(fit(equilateral, hexagon).scale == doctest::Approx(1.5).epsilon(1e-9));
  CHECK(fit(regular(360, 1), triangle).scale == doctest::Approx(1.0000011).epsilon(1e-7));
  const Polygon ell{{{0, 0}, {2, 0}, {2, 1}, {1, 1}, {1, 3}, {0, 3}}};
  CHECK(fit(ell, {{{0, 0}, {4, 0}, {4, 3}, {0, 3}}}).scale == doctest::Approx(1).epsilon(1e-9));
  const Polygon right{{{0, 0}, {2, 0}, {0, 2}}};
  const Polygon trapezoid{{{0, 0}, {6, 0}, {4, 3}, {0, 3}}};
  CHECK(fit(right, trapezoid).scale == doctest::Approx(1.5).epsilon(1e-9));
  Polygon turned = mirrored(right, 0);
  const Fit other = fit(turned, trapezoid);
  CHECK(other.scale == doctest::Approx(1.5).epsilon(1e-9));
  // By hand the move is (4, 0); the turned triangle has room to slide from 3 to 4.
  CHECK(other.move.x >= 3 - 1e-9);
  CHECK(other.move.x <= 4 + 1e-9);
  CHECK(fit(right, trapezoid, 0, true).scale == doctest::Approx(1.5).epsilon(1e-9));
}

TEST_CASE("a margin is kept from every side") {
  // A square of side 10 less 1 on each side.
  CHECK(fit(kSquare, {{{0, 0}, {10, 0}, {10, 10}, {0, 10}}}, 1).scale == doctest::Approx(8));
}

TEST_CASE("a figure that must reach a side reaches it, without margin there") {
  const Polygon box{{{0, 0}, {10, 0}, {10, 10}, {0, 10}}};
  const Fit f =
      largestFit({.figure = {kSquare}, .region = {box}, .margin = 1, .flush = Side{{0, 1}, 10}});
  CHECK(f.scale == doctest::Approx(8));
  CHECK(f.placed(Point{0, 1}).y == doctest::Approx(10));
}

// Closed form: beside a notch the figure has the free width, or the free height, whichever is more.
TEST_CASE("a square in an L takes the thicker arm and a figure of the L's own shape fits at 1") {
  const Polygon ell{{{0, 0}, {8, 0}, {8, 3}, {4, 3}, {4, 10}, {0, 10}}};
  const Fit f = fit(kSquare, ell);
  CHECK(f.scale == doctest::Approx(4).epsilon(1e-6));
  CHECK(f.within == 0);
  CHECK(fit(ell, ell).scale == doctest::Approx(1).epsilon(1e-6));
}

// The trap: a C fits its own shape at 1 and around 0.9 hits the peg that fills its mouth.
TEST_CASE("a C fits around its own peg although its smaller copy does not") {
  const Polygon c{{{0, 0}, {8, 0}, {8, 1}, {1, 1}, {1, 4}, {8, 4}, {8, 5}, {0, 5}}};
  const Fit f = fit(c, c);
  CHECK(f.scale == doctest::Approx(1).epsilon(1e-6));
  CHECK(f.within == 0);
}

TEST_CASE("a region with a hole is fitted around the hole") {
  const Polygon box{{{0, 0}, {10, 0}, {10, 10}, {0, 10}}};
  const Polygon hole{{{6, 6}, {7, 6}, {7, 7}, {6, 7}}};
  const Fit f = largestFit({.figure = {kSquare}, .region = {box, hole}});
  CHECK(f.scale == doctest::Approx(6).epsilon(1e-6));
}

TEST_CASE("convex pieces are convex and add up to the outline") {
  CHECK(rc::check("pieces", [] {
    const Polygon figure = arbitraryFigure();
    double sum = 0;
    for (const Polygon& piece : convexPieces(figure)) {
      RC_ASSERT(isConvex(piece));
      sum += area(piece);
    }
    RC_ASSERT(std::abs(sum - area(figure)) < 1e-9 * sum);
  }));
}

TEST_CASE("in convex regions the scale is the largest: it fits, half a percent more does not") {
  CHECK(rc::check("largest, convex", [] {
    const Polygon figure = arbitraryFigure(), region = arbitraryConvex();
    const Fit f = fit(figure, region);
    RC_ASSERT(f.within == 0);
    RC_ASSERT(outsideShare(figure, {region}, f) < 1e-4);
    RC_ASSERT(!someMoveFits(figure, region, f.scale * 1.005));
  }));
}

TEST_CASE("in other regions the scale is the largest: it fits, half a percent more does not") {
  CHECK(rc::check("largest, not convex", [] {
    const Polygon figure = arbitraryFigure(), region = arbitraryStar(3);
    const Fit f = fit(figure, region);
    RC_ASSERT(f.scale > 0);
    RC_ASSERT(outsideShare(figure, {region}, f) < 1e-4);
    RC_ASSERT(f.within < 0.001);
    RC_ASSERT(!someMoveFits(figure, region, f.scale * 1.005));
  }));
}

TEST_CASE("of silhouettes that may be turned about the scale is the largest both ways round") {
  CHECK(rc::check("largest, silhouettes", [] {
    const Polygon figure = arbitraryPerson();
    const bool convex = *rc::gen::inRange(0, 3) == 0;
    const Polygon region = convex ? arbitraryConvex() : arbitraryPanel();
    const Fit f = fit(figure, region, 0, true);
    RC_ASSERT(f.scale > 0);
    RC_ASSERT(f.within < 0.001);
    RC_ASSERT(outsideShare(figure, {region}, f) < 1e-4);
    RC_ASSERT(!someMoveFits(figure, region, f.scale * 1.005));
    RC_ASSERT(!someMoveFits(mirrored(figure, 0), region, f.scale * 1.005));
  }));
}

TEST_CASE("the second judge finds a fit just below the largest scale") {
  CHECK(rc::check("judge", [] {
    // Of a star-shaped figure every smaller copy fits too.
    const Polygon figure = arbitraryStar(3), region = arbitraryStar(3);
    RC_ASSERT(someMoveFits(figure, region, fit(figure, region).scale * 0.99));
  }));
}

TEST_CASE("a mirrored region gives a mirrored answer") {
  CHECK(rc::check("mirror", [] {
    const Polygon figure = arbitraryFigure(), region = arbitraryStar(3);
    const double there = fit(figure, region).scale;
    RC_ASSERT(std::abs(fit(mirrored(figure, 0), mirrored(region, 0)).scale - there) < 1e-6 * there);
    const double either = fit(figure, region, 0, true).scale;
    RC_ASSERT(std::abs(fit(figure, mirrored(region, 0), 0, true).scale - either) < 1e-6 * either);
    RC_ASSERT(either >= there * (1 - 1e-9));
  }));
}

TEST_CASE("more margin never gives a larger fit") {
  CHECK(rc::check("margin", [] {
    const Polygon figure = arbitraryFigure(), region = arbitraryStar(4);
    double before = fit(figure, region).scale;
    for (const double margin : {0.2, 0.5, 1.0}) {
      const double now = fit(figure, region, margin).scale;
      RC_ASSERT(now <= before + 1e-4);
      before = now;
    }
  }));
}

}  // namespace tw
