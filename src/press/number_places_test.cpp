#include "press/number_places.h"

#include <doctest/doctest.h>

#include "geometry/polygon.h"
#include "press/example_rough.h"
#include "press/overlays.h"
#include "press/recorder.h"

using namespace tw;

namespace {

constexpr double kRadius = 2;

double distanceTo(const Polygon& shape, Point p) {
  return contains(shape, p) ? 0 : distanceToOutline(shape, p);
}

}  // namespace

TEST_CASE("a panel's number stands inside its panel and trim, and on no inset") {
  const Typesetter typesetter;
  for (const int kind : {0, 1, 2}) {
    const RoughPicture page = example::rough(kind, "A");
    const std::vector<Point> places = numberPlaces(page, typesetter, kRadius);
    REQUIRE(places.size() == page.rough.panels.size());
    for (std::size_t i = 0; i < places.size(); ++i) {
      CHECK(contains(page.rough.panels[i].outline, places[i]));
      CHECK(page.sheet.trimRect().contains(places[i]));
      for (const RoughPanel& other : page.rough.panels)
        if (page.rough.panels[i].ground && !other.ground)
          CHECK_FALSE(contains(other.outline, places[i]));
    }
  }
}

TEST_CASE("numbers cover no balloon, no tail, no letters and no head") {
  const Typesetter typesetter;
  for (const int kind : {0, 1, 2})
    for (const double radius : {2.0, 4.5}) {
      RoughPicture page = example::rough(kind, "A");
      for (RoughPanel& panel : page.rough.panels) {
        const Rect box = bounds(panel.outline);
        SeenFigure figure;
        figure.face = ellipse(box.min + Vector{box.width() * 0.2, box.height() * 0.3}, 5, 7);
        panel.figures.push_back(figure);
      }
      for (const Point p : numberPlaces(page, typesetter, radius))
        for (const RoughPanel& panel : page.rough.panels) {
          for (const Polygon& shape : copyShapes(panel, typesetter))
            CHECK(distanceTo(shape, p) > radius);
          CHECK(distanceTo(panel.figures.back().face, p) > radius);
        }
    }
}

TEST_CASE("a number finds its place on the border when copy fills the entry corner") {
  const Typesetter typesetter;
  RoughPicture page = example::rough(0, "A");
  RoughPanel& panel = page.rough.panels[4];
  PlacedBalloon full;
  full.outline = polygonOf(bounds(panel.outline).inset(3.2));
  full.lines = {{"ALL OF IT", bounds(panel.outline).centre()}};
  full.sizePt = 7.5;
  panel.balloons = {full};
  const Point p = numberPlaces(page, typesetter, kRadius)[4];
  CHECK(distanceToOutline(panel.outline, p) < 0.01);
  CHECK(distanceTo(panel.balloons[0].outline, p) > kRadius);
}

TEST_CASE("numbers stand at the corner where reading enters: left, or right for right-to-left") {
  const Typesetter typesetter;
  RoughPicture page = example::rough(0, "A");
  const Rect box = bounds(page.rough.panels[4].outline);
  CHECK(numberPlaces(page, typesetter, kRadius)[4].x < box.centre().x);
  page.direction = ReadingDirection::RightToLeft;
  CHECK(numberPlaces(page, typesetter, kRadius)[4].x > box.centre().x);
}

TEST_CASE("free letters are kept clear as they stand, turned") {
  const Typesetter typesetter;
  RoughPanel panel;
  PlacedBalloon doom = example::balloon(CopyKind::Sfx, {40, 40}, {"DOOM"}, {0, 0});
  doom.turnDeg = 90;  // reads downward
  panel.balloons = {doom};
  const std::vector<Polygon> shapes = copyShapes(panel, typesetter);
  REQUIRE(shapes.size() == 1);
  const Rect box = bounds(shapes[0]);
  CHECK(box.height() > 2 * box.width());
}
