#include "stage/perspective_grid.h"

#include <doctest/doctest.h>
#include <rapidcheck.h>

#include <cmath>

#include "geometry/polygon.h"

namespace tw {
namespace {

constexpr Rect kFrame{{10, 20}, {100, 80}};
const Polygon kPanel = polygonOf(kFrame);

CameraPlace placeAt(double panDeg, double pitchDeg, double rollDeg) {
  CameraPlace place;
  place.eye = {0, 1.6, -5};
  place.panDeg = panDeg;
  place.pitchDeg = pitchDeg;
  place.rollDeg = rollDeg;
  return place;
}

PerspectiveGrid gridOf(const CameraPlace& place) {
  return perspectiveGrid(Camera(place, kFrame.width() / kFrame.height()), place, Vec3(0.2, 0, 0),
                         kFrame, kPanel);
}

/// Distance of p from the whole line, mm.
double off(const RuledLine& line, Point p) {
  return std::abs(cross((line.to - line.from).unit(), p - line.from));
}

const VanishingPoint* vanishing(const PerspectiveGrid& grid, const std::string& of) {
  for (const VanishingPoint& v : grid.vanishing)
    if (v.of == of) return &v;
  return nullptr;
}

}  // namespace

// Horizon distance from the principal point = f·tan|pitch|: facts, staging §5.3 (Hartley &
// Zisserman's formula); here the frame is 90 mm wide, so f = 90 · 50 / 36 = 125 mm.
TEST_CASE("the horizon lies where the published formula puts it") {
  for (const double pitch : {0.0, 5.0, -5.0, 10.0}) {
    const PerspectiveGrid grid = gridOf(placeAt(0, pitch, 0));
    REQUIRE(grid.horizon);
    const double want = 50 + 125 * std::tan(pitch * 3.14159265358979 / 180);
    CHECK(grid.horizon->from.y == doctest::Approx(want).epsilon(1e-9));
    CHECK(grid.horizon->to.y == doctest::Approx(want).epsilon(1e-9));
  }
}

TEST_CASE("vanishing points of level lines lie on the horizon, whatever the camera") {
  CHECK(rc::check("on the horizon", [] {
    const auto angle = [](int most) { return *rc::gen::inRange(-most, most + 1) + 0.37; };
    const PerspectiveGrid grid = gridOf(placeAt(angle(70), angle(8), angle(20)));
    if (!grid.horizon) return;
    for (const char* of : {"left to right", "away"})
      if (const VanishingPoint* v = vanishing(grid, of))
        RC_ASSERT(off(*grid.horizon, v->at) < 1e-6 * (1 + v->at.x * v->at.x));
  }));
}

TEST_CASE("every ground line runs to one of the two level vanishing points") {
  const PerspectiveGrid grid = gridOf(placeAt(25, -6, 4));
  const VanishingPoint* across = vanishing(grid, "left to right");
  const VanishingPoint* away = vanishing(grid, "away");
  REQUIRE(across);
  REQUIRE(away);
  REQUIRE(grid.ground.size() > 8);
  for (const RuledLine& line : grid.ground)
    CHECK(std::min(off(line, across->at), off(line, away->at)) < 1e-6);
}

TEST_CASE("a level camera sees the wall's uprights parallel, a pitched one converging") {
  CHECK_FALSE(vanishing(gridOf(placeAt(0, 0, 0)), "upright"));
  const PerspectiveGrid down = gridOf(placeAt(0, -12, 0));
  const VanishingPoint* nadir = vanishing(down, "upright");
  REQUIRE(nadir);
  CHECK(nadir->at.y > kFrame.max.y);
  for (const RuledLine& line : down.upright)
    if (std::abs(line.to.y - line.from.y) > std::abs(line.to.x - line.from.x))
      CHECK(off(line, nadir->at) < 1e-6);
}

TEST_CASE("an upright of the wall is as high beside a figure as its squares say") {
  const CameraPlace place = placeAt(0, 0, 0);
  const PerspectiveGrid grid = gridOf(place);
  // Image size = f · H / d (facts, staging §5.2): wall 5 m away, three squares high.
  const double want = 125 * 3 * grid.squareM / 5;
  bool found = false;
  for (const RuledLine& line : grid.upright)
    if (std::abs(line.from.x - line.to.x) < 1e-9) {
      found = true;
      CHECK(std::abs(line.to.y - line.from.y) == doctest::Approx(want).epsilon(1e-9));
    }
  CHECK(found);
}

TEST_CASE("nothing is drawn that does not meet the panel") {
  const PerspectiveGrid grid = gridOf(placeAt(40, -10, 10));
  const Rect near = kFrame.outset(1e-6);
  for (const auto* lines : {&grid.ground, &grid.upright})
    for (const RuledLine& line : *lines) {
      const double length = (line.to - line.from).length();
      bool meets = false;
      for (int i = 0; i <= 20000 && !meets; ++i) {
        const Point p = line.from + (line.to - line.from) * (i / 20000.0);
        meets = p.x >= near.min.x && p.x <= near.max.x && p.y >= near.min.y && p.y <= near.max.y;
      }
      CHECK_MESSAGE((meets || length > 1e5), line.from.x);
    }
}

}  // namespace tw
