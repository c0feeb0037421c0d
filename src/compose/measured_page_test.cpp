#include "compose/measured_page.h"

#include <doctest/doctest.h>

#include <algorithm>

#include "compose/small_page.h"
#include "geometry/polygon.h"
#include "letter/placed_copy.h"

namespace tw {

namespace {

void checkSame(const Measured& a, const Measured& b) {
  CHECK(a.rough == b.rough);
  CHECK(a.findings == b.findings);
  REQUIRE(a.arrivals.size() == b.arrivals.size());
  for (std::size_t i = 0; i < a.arrivals.size(); ++i)
    CHECK(a.arrivals[i].next == doctest::Approx(b.arrivals[i].next));
}

}  // namespace

TEST_CASE("a rough fresh from the search measures as the search left it") {
  const SmallPage page;
  const MeasuredPage again = page.measured();
  CHECK(again.rough().card == page.rough.card);
  CHECK(again.rough().score == doctest::Approx(page.rough.score));
  CHECK(again.rough().panels == page.rough.panels);
}

TEST_CASE("every finding has a line on the card, its figures and what it stands on") {
  const SmallPage page;
  const MeasuredPage measured = page.measured();
  CHECK_FALSE(measured.measured().findings.empty());
  for (const Finding& finding : measured.measured().findings) {
    CHECK(std::ranges::any_of(measured.rough().card, [&](const CardLine& line) {
      return line.rule == finding.rule && line.panel == finding.panel &&
             line.reason == finding.reason;
    }));
    CHECK_FALSE(finding.measure.empty());
    CHECK_FALSE(finding.remedy.empty());
    CHECK((finding.panel == 0) == finding.beat.empty());
  }
}

TEST_CASE("putting the same staging in changes nothing, another one what that panel shows") {
  const SmallPage page;
  const MeasuredPage before = page.measured();
  MeasuredPage after = before;
  after.restage(1, before.rough().panels[1].staging);
  checkSame(before.measured(), after.measured());
  StagingChoice choice = before.rough().panels[1].staging.choice;
  choice.mirrored = !choice.mirrored;
  after.restage(1, after.solved(1, choice));
  CHECK(after.rough().panels[1] != before.rough().panels[1]);
  CHECK(after.rough().panels[0] == before.rough().panels[0]);
  CHECK(after.rough().panels[2] == before.rough().panels[2]);
}

TEST_CASE("an edit and the same page measured from the start agree") {
  const SmallPage page;
  MeasuredPage edited = page.measured();
  std::vector<std::pair<std::size_t, Polygon>> outlines;
  for (std::size_t i = 0; i < 2; ++i) {
    Polygon outline = edited.rough().panels[i].outline;
    for (Point& p : outline.points) p.y *= 0.97;
    outlines.emplace_back(i, outline);
  }
  edited.reshape(outlines);
  const auto fresh = page.measuredOf(edited.rough());
  REQUIRE(fresh);
  checkSame(edited.measured(), fresh->measured());
}

namespace {

/// The page with panel 0's balloon dragged a little by hand.
MeasuredPage withHandPlaced(const SmallPage& page) {
  MeasuredPage out = page.measured();
  std::vector<PlacedBalloon> balloons = out.rough().panels[0].balloons;
  REQUIRE(balloons.size() == 1);
  balloons[0] = shifted(balloons[0], {1.5, 2});
  balloons[0].byHand = true;
  RoughPanel changed = out.rough().panels[0];
  changed.balloons = balloons;
  out.replace(0, changed);
  REQUIRE(out.rough().panels[0].balloons == balloons);
  MeasuredPage same = page.measured();
  same.reletter(0, balloons);
  CHECK(same.rough() == out.rough());
  return out;
}

}  // namespace

TEST_CASE("a balloon placed by hand stays when another panel or nothing at all is restaged") {
  const SmallPage page;
  MeasuredPage measured = withHandPlaced(page);
  const std::vector<PlacedBalloon> balloons = measured.rough().panels[0].balloons;
  StagingChoice choice = measured.rough().panels[1].staging.choice;
  choice.mirrored = !choice.mirrored;
  measured.restage(1, measured.solved(1, choice));
  CHECK(measured.rough().panels[0].balloons == balloons);
  measured.restage(0, measured.rough().panels[0].staging);
  CHECK(measured.rough().panels[0].balloons == balloons);
  const auto fresh = page.measuredOf(measured.rough());
  REQUIRE(fresh);
  CHECK(fresh->rough().panels[0].balloons == balloons);
  CHECK(fresh->rough() == measured.rough());
}

TEST_CASE("a balloon placed by hand goes along with its panel") {
  const SmallPage page;
  MeasuredPage measured = withHandPlaced(page);
  const PlacedBalloon was = measured.rough().panels[0].balloons[0];
  Polygon outline = measured.rough().panels[0].outline;
  const Polygon before = outline;
  for (Point& p : outline.points) p.y += 5;
  measured.reshape({{0, outline}});
  const PlacedBalloon moved = measured.rough().panels[0].balloons[0];
  CHECK(moved.byHand);
  CHECK(moved.outline.points[0].y == doctest::Approx(was.outline.points[0].y + 5));
  measured.reshape({{0, before}});
  const PlacedBalloon& back = measured.rough().panels[0].balloons[0];
  CHECK(back.outline.points[0].y == doctest::Approx(was.outline.points[0].y));
  CHECK(back.outline.points[0].x == doctest::Approx(was.outline.points[0].x));
}

TEST_CASE("a rough of another state of the script is refused with what to do") {
  const SmallPage page;
  Rough old = page.rough;
  old.panels.pop_back();
  const auto measured = page.measuredOf(old);
  REQUIRE_FALSE(measured);
  CHECK(measured.error().front().cause == Cause::BadInput);
  CHECK_FALSE(measured.error().front().advice.empty());
}

TEST_CASE("greys cover the panel and are light outside of it") {
  const SmallPage page;
  const MeasuredPage measured = page.measured();
  for (std::size_t i = 0; i < measured.greys().size(); ++i) {
    const GreyPicture& grey = measured.greys()[i];
    const Rect box = bounds(measured.rough().panels[i].outline);
    CHECK(grey.width * grey.mmPerPx == doctest::Approx(box.width()));
    for (const float light : grey.light) {
      CHECK_UNARY(light >= 0);
      CHECK_UNARY(light <= 1);
    }
  }
}

TEST_CASE("a panel whose side is dragged to the bleed bleeds until it is dragged back") {
  const SmallPage page;
  MeasuredPage measured = page.measured();
  const Polygon before = measured.rough().panels[0].outline;
  const Rect box = bounds(before);
  measured.reshape({{0, polygonOf(Rect{{-3, box.min.y}, box.max})}});
  CHECK(measured.rough().panels[0].bleeds);
  CHECK(measured.measured().layout.panels[0].bleeds);
  measured.reshape({{0, before}});
  CHECK_FALSE(measured.rough().panels[0].bleeds);
}

TEST_CASE(
    "a camera that the artist moved stays when its panel takes another shape, its lines go along") {
  const SmallPage page;
  MeasuredPage measured = page.measured();
  RoughPanel changed = measured.rough().panels[0];
  const Rect before = bounds(changed.outline);
  changed.staging.camera.eye.x += 0.4;
  changed.strokes = {{{before.min, before.centre()}, {0.5, 0.5}, true}};
  measured.replace(0, changed);
  Polygon outline = changed.outline;
  for (Point& p : outline.points) p.y *= 0.95;
  const Staging other = measured.rough().panels[1].staging;
  measured.reshape({{0, outline}});
  const RoughPanel& after = measured.rough().panels[0];
  CHECK(after.staging == changed.staging);
  CHECK(measured.rough().panels[1].staging == other);
  CHECK((after.strokes[0].points[1] - bounds(outline).centre()).length() < 1e-9);
}

}  // namespace tw
