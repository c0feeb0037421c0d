// Laws of the drawn panel, on simple shapes whose true outlines are known.
#include <doctest/doctest.h>
#include <rapidcheck.h>

#include <cmath>

#include "geometry/polygon.h"
#include "stage/picture.h"
#include "stage/refine.h"
#include "stage/solid_shapes.h"

using namespace tw;

namespace {

constexpr double kWide = 120, kHigh = 80;
const Rect kFrame{{10, 20}, {10 + kWide, 20 + kHigh}};

Solid ball(const Place3& at, double size) {
  Solid solid{.mesh = placed(ellipsoidMesh({size, size, size}, 64), at, 0, 0, true)};
  solid.prop = 0;
  return solid;
}

Camera standing(double eyeHeight = 1.4) {
  CameraPlace place;
  place.eye = {0, eyeHeight, -4};
  return Camera(place, kWide / kHigh);
}

DrawOptions plain() {
  DrawOptions options;
  options.setLines = false;
  options.shadows = false;
  options.setting = "none";
  return options;
}

bool sameDrawing(const Drawing& a, const Drawing& b) {
  if (a.strokes.size() != b.strokes.size() || a.tones.size() != b.tones.size()) return false;
  for (std::size_t i = 0; i < a.strokes.size(); ++i)
    if (a.strokes[i].points != b.strokes[i].points || a.strokes[i].widths != b.strokes[i].widths)
      return false;
  for (std::size_t i = 0; i < a.tones.size(); ++i)
    if (a.tones[i].region != b.tones[i].region) return false;
  return true;
}

double inkLength(const Drawing& drawing) {
  double sum = 0;
  for (const Stroke& s : drawing.strokes)
    for (std::size_t i = 1; i < s.points.size(); ++i)
      sum += (s.points[i] - s.points[i - 1]).length();
  return sum;
}

}  // namespace

TEST_CASE("a ball is drawn as one line on its analytic circle") {
  // Source: closed form; the tangent cone of a sphere of radius r at distance d on the axis is
  // seen with radius f·r / sqrt(d² − r²).
  const double r = 0.6, d = 4;
  const Drawing drawing =
      drawPanel({ball({0, 1.4, 0}, 2 * r)}, standing(), kFrame, polygonOf(kFrame), plain());
  REQUIRE(drawing.strokes.size() == 1);
  const double radius = 50.0 / 36 * r / std::sqrt(d * d - r * r) * kWide;
  for (const Point& p : drawing.strokes[0].points)
    CHECK((p - kFrame.centre()).length() == doctest::Approx(radius).epsilon(0.005));
}

TEST_CASE("what lies behind a nearer thing is not drawn") {
  const Solid near = ball({0, 1.4, -1}, 1.2), far = ball({0, 1.4, 3}, 1.0);
  const Drawing both = drawPanel({near, far}, standing(), kFrame, polygonOf(kFrame), plain());
  const Drawing alone = drawPanel({near}, standing(), kFrame, polygonOf(kFrame), plain());
  CHECK(both.strokes.size() == alone.strokes.size());
}

TEST_CASE("a line that goes behind something stops short of it") {
  const Solid near = ball({0, 1.4, -0.5}, 0.9);
  Solid rail{.mesh = placed(boxMesh({6, 0.1, 0.1}), {0, 1.35, 1}, 0)};
  const Drawing drawing = drawPanel({rail, near}, standing(), kFrame, polygonOf(kFrame), plain());
  const double r = 0.45, d = 3.5;
  const double radius = 50.0 / 36 * r / std::sqrt(d * d - r * r) * kWide;
  int railStrokes = 0;
  for (const Stroke& s : drawing.strokes) {
    double nearest = 1e9, farthest = 0;
    for (const Point& p : s.points) {
      nearest = std::min(nearest, (p - kFrame.centre()).length());
      farthest = std::max(farthest, (p - kFrame.centre()).length());
    }
    if (farthest < radius * 1.02) continue;  // the ball itself
    ++railStrokes;
    CHECK(nearest > radius + 0.25);
  }
  CHECK(railStrokes >= 4);
}

TEST_CASE("every stroke's middle lies within the panel") {
  CHECK(rc::check("strokes stay inside but for their run-out", [](int x, int z, int turn) {
    const double at = (x % 30) / 10.0, away = std::abs(z % 50) / 10.0;
    Solid box{.mesh = placed(boxMesh({1.2, 1.5, 0.8}), {at, 0, away - 1}, turn % 180)};
    DrawOptions options;
    options.setting = "exterior field";
    const Drawing drawing =
        drawPanel({box, ball({-at, 1, away}, 0.8)}, standing(), kFrame, polygonOf(kFrame), options);
    for (const Stroke& s : drawing.strokes)
      RC_ASSERT(kFrame.outset(0.5).contains(s.points[s.points.size() / 2]));
  }));
}

TEST_CASE("a mirrored scene gives the mirrored lines") {
  const auto scene = [](double sign) {
    return std::vector<Solid>{
        ball({sign * 0.7, 1.2, 0.5}, 0.8),
        {.mesh = placed(boxMesh({0.6, 0.9, 0.5}), {sign * -0.6, 0, 0}, sign * 30)}};
  };
  const Drawing a = drawPanel(scene(1), standing(), kFrame, polygonOf(kFrame), plain());
  const Drawing b = drawPanel(scene(-1), standing(), kFrame, polygonOf(kFrame), plain());
  CHECK(inkLength(a) == doctest::Approx(inkLength(b)).epsilon(0.01));
  // Each point of one has a point of the other close to its mirror image.
  const double axis = kFrame.centre().x;
  int far = 0, all = 0;
  for (const Stroke& s : a.strokes)
    for (const Point& p : s.points) {
      double nearest = 1e9;
      for (const Stroke& t : b.strokes)
        for (const Point& q : t.points)
          nearest = std::min(nearest, (Point{2 * axis - p.x, p.y} - q).length());
      far += nearest > 0.4;
      ++all;
    }
  CHECK(far <= all / 50);
}

TEST_CASE("the same scene is drawn the same, stroke by stroke") {
  const std::vector<Solid> scene{ball({0.4, 1, 0}, 0.9),
                                 {.mesh = placed(coneMesh({0.8, 1.4, 0.8}), {-0.7, 0, 0.3}, 0)}};
  DrawOptions options;
  options.setting = "exterior lake night";
  const auto draw = [&] {
    return drawPanel(scene, standing(), kFrame, polygonOf(kFrame), options);
  };
  CHECK(sameDrawing(draw(), draw()));
}

TEST_CASE("the horizon is drawn at the eye's height") {
  // Source: closed form; with level pitch the horizon halves the frame.
  DrawOptions options;
  options.setting = "exterior lake";
  const Drawing drawing = drawPanel({}, standing(), kFrame, polygonOf(kFrame), options);
  double longest = 0, height = 0;
  for (const Stroke& s : drawing.strokes) {
    const Rect box = bounds(s.points);
    if (box.width() > longest) {
      longest = box.width();
      height = box.centre().y;
    }
  }
  CHECK(longest > 0.9 * kWide);
  CHECK(height == doctest::Approx(kFrame.centre().y));
}

TEST_CASE("the outline is heavier on the side turned from the light") {
  const Drawing drawing =
      drawPanel({ball({0, 1.4, 0}, 1.2)}, standing(), kFrame, polygonOf(kFrame), plain());
  REQUIRE(drawing.strokes.size() == 1);
  double upperLeft = 0, lowerRight = 0;
  const Stroke& s = drawing.strokes[0];
  for (std::size_t i = 0; i < s.points.size(); ++i) {
    const Vector v = s.points[i] - kFrame.centre();
    if (v.x < 0 && v.y < 0) upperLeft = std::max(upperLeft, s.widths[i]);
    if (v.x > 0 && v.y > 0) lowerRight = std::max(lowerRight, s.widths[i]);
  }
  CHECK(lowerRight > 1.3 * upperLeft);
}

TEST_CASE("refining brings a coarse ball nearer to the true one and keeps it closed") {
  const Mesh coarse = ellipsoidMesh({2, 2, 2}, 16);
  const Mesh fine = refinedOnce(coarse);
  CHECK(fine.triangles.size() == 4 * coarse.triangles.size());
  const auto worst = [](const Mesh& m) {
    double sag = 0;
    for (const auto& t : m.triangles)
      sag = std::max(sag, 1 - ((m.points[t[0]] + m.points[t[1]]) / 2 - Vec3(0, 1, 0)).norm());
    return sag;
  };
  CHECK(worst(fine) < 0.5 * worst(coarse));
  // Euler's formula for a closed surface without handles: V − E + F = 2 with E = 3F/2.
  CHECK(2 * fine.points.size() == 4 + fine.triangles.size());
}
