#include "compose/mix.h"

#include "compose/layout_of.h"
#include "compose/small_page.h"
#include "geometry/polygon.h"

namespace tw {

namespace {

/// Another rough of the page: plain tiers, every panel mirrored, one joint turned by hand.
Rough another(const SmallPage& page) {
  Rough out = page.rough;
  out.name = "B";
  out.arrangement = "[1 2 3]";
  out.treatment = "plain";
  for (std::size_t i = 0; i < 3; ++i) {
    RoughPanel& panel = out.panels[i];
    const double top = 8 + 75.0 * static_cast<double>(i);
    panel.outline = polygonOf(Rect{{8, top}, {152, top + 70}});
    panel.bleeds = panel.ground = false;
    panel.staging.choice.mirrored = !panel.staging.choice.mirrored;
  }
  out.panels[1].staging.figures[0].turnsDeg["head"] = {0, 0, 30};
  out.panels[1].strokes.push_back({{{8, 83}, {152, 153}, {80, 118}}, {1, 1, 1}, true});
  return out;
}

}  // namespace

TEST_CASE("one panel of another rough comes along with its hand and the rest stays") {
  SmallPage page;
  const Rough other = another(page);
  const Mixed out = withPanelOf(page.wishes(), page.workshop().stager, page.rough, other, 1);
  CHECK(out.notes.empty());
  CHECK(out.rough.panels[0] == page.rough.panels[0]);
  CHECK(out.rough.panels[2] == page.rough.panels[2]);
  const RoughPanel& mixed = out.rough.panels[1];
  CHECK(mixed.outline == page.rough.panels[1].outline);
  CHECK(mixed.staging.choice == other.panels[1].staging.choice);
  CHECK(mixed.staging.figures[0].turnsDeg == other.panels[1].staging.figures[0].turnsDeg);
  CHECK(mixed.staging.camera != other.panels[1].staging.camera);
}

TEST_CASE("strokes keep their shape and stay inside the frame that they come into") {
  SmallPage page;
  const Mixed out =
      withPanelOf(page.wishes(), page.workshop().stager, page.rough, another(page), 1);
  REQUIRE(out.rough.panels[1].strokes.size() == 1);
  const PenStroke& stroke = out.rough.panels[1].strokes[0];
  const Rect frame = bounds(out.rough.panels[1].outline).outset(1e-6);
  for (const Point& p : stroke.points) CHECK(frame.contains(p));
  const Vector way = stroke.points[1] - stroke.points[0];
  CHECK(way.y / way.x == doctest::Approx(70.0 / 144));
  CHECK((stroke.points[2] - frame.centre()).length() < 1e-6);
}

TEST_CASE("what of the panel cannot come along is told") {
  SmallPage page;
  Rough into = page.rough;
  into.panels[1].strokes.push_back({{{20, 20}, {30, 30}}, {0.5, 0.5}, false});
  REQUIRE_FALSE(into.panels[1].balloons.empty());
  into.panels[1].balloons[0].byHand = true;
  const Rough other = another(page);
  const Mixed out = withPanelOf(page.wishes(), page.workshop().stager, into, other, 1);
  CHECK(out.notes.size() == 2);
  CHECK(out.rough.panels[1].balloons[0] == into.panels[1].balloons[0]);
  CHECK(out.rough.panels[1].strokes.size() == other.panels[1].strokes.size());
}

TEST_CASE("the arrangement of one rough takes the stagings of another") {
  SmallPage page;
  Rough stagings = page.rough;
  REQUIRE_FALSE(stagings.panels[0].balloons.empty());
  stagings.panels[0].balloons[0].byHand = true;
  const Rough shapes = another(page);
  const Mixed out = withArrangementOf(page.wishes(), page.workshop().stager, shapes, stagings);
  CHECK(out.rough.arrangement == shapes.arrangement);
  CHECK(out.rough.treatment == shapes.treatment);
  for (std::size_t i = 0; i < 3; ++i) {
    CHECK(out.rough.panels[i].outline == shapes.panels[i].outline);
    CHECK(out.rough.panels[i].staging.choice == stagings.panels[i].staging.choice);
  }
  CHECK(out.notes.size() == 1);
}

TEST_CASE("a mixed rough can be measured whole and scored") {
  SmallPage page;
  const Mixed out =
      withPanelOf(page.wishes(), page.workshop().stager, page.rough, another(page), 1);
  const auto measured = page.measuredOf(out.rough);
  REQUIRE(measured);
  double sum = 0;
  for (const CardLine& line : measured->rough().card) sum += line.cost;
  CHECK(measured->rough().score == doctest::Approx(sum));
  CHECK(measured->rough().score != page.rough.score);
}

}  // namespace tw
