#include "press/finding_places.h"

#include <doctest/doctest.h>

#include "geometry/polygon.h"
#include "press/example_rough.h"
#include "press/finding_mark.h"
#include "press/number_places.h"

namespace tw {

namespace {

Finding inPanel(int panel) {
  Finding out;
  out.panel = panel;
  out.severity = Severity::Must;
  return out;
}

/// A page of two panels with a slanted gutter between them, 60 mm high.
RoughPicture slanted() {
  RoughPicture page = example::rough(0, "A", 2);
  page.rough.panels[0].ground = page.rough.panels[1].ground = false;
  page.rough.panels[0].outline = {{{10, 10}, {90, 10}, {60, 70}, {10, 70}}};
  page.rough.panels[1].outline = {{{94, 10}, {150, 10}, {150, 70}, {64, 70}}};
  return page;
}

/// No part of the largest mark lies on the border or beyond it.
bool isInside(const Polygon& outline, Point at) {
  return contains(outline, at) && distanceToOutline(outline, at) > 1.36 * kFindingMarkMm;
}

}  // namespace

TEST_CASE("marks on slanted panels stay inside their own panel") {
  const RoughPicture page = slanted();
  const Typesetter typesetter;
  std::vector<Finding> findings;
  for (int i = 0; i < 6; ++i) {
    findings.push_back(inPanel(1 + i % 2));
    // Places in the slanted gutter, in the neighbour and past the panel's foot.
    findings.back().place = polygonOf({{50, 40.0 + 8 * i}, {70, 44.0 + 8 * i}});
  }
  const auto marks = findingPlaces(page, findings, typesetter);
  REQUIRE(marks.size() == 6);
  for (const PlacedMark& mark : marks) {
    const auto panel = static_cast<std::size_t>(findings[mark.finding].panel) - 1;
    CHECK(isInside(page.rough.panels[panel].outline, mark.at));
  }
}

TEST_CASE("fourteen marks in one panel stand inside it and none on another or on a number") {
  const RoughPicture page = slanted();
  const Typesetter typesetter;
  const std::vector<Finding> findings(14, inPanel(1));
  const auto marks = findingPlaces(page, findings, typesetter);
  REQUIRE(marks.size() == 14);
  for (const Point number : numberPlaces(page, typesetter, 2))
    for (const PlacedMark& mark : marks) CHECK((mark.at - number).length() > 4.2);
  for (std::size_t a = 0; a < marks.size(); ++a) {
    CHECK(isInside(page.rough.panels[0].outline, marks[a].at));
    for (std::size_t b = a + 1; b < marks.size(); ++b)
      CHECK((marks[a].at - marks[b].at).length() > 2 * 1.35 * kFindingMarkMm);
  }
}

TEST_CASE("a mark stands where it is wished when that is free and beside copy otherwise") {
  MarkRoom room{polygonOf({{0, 0}, {80, 40}}), {}, {}, {}};
  CHECK(markPlace(room, {40, 20}) == Point{40, 20});
  room.clear = {polygonOf({{35, 15}, {45, 25}})};
  const Point beside = markPlace(room, {40, 20});
  CHECK_FALSE(contains(room.clear[0], beside));
  CHECK((beside - Point{40, 20}).length() < 12);
}

TEST_CASE("a panel smaller than a mark takes it in its middle") {
  const MarkRoom room{polygonOf({{10, 10}, {12, 30}}), {}, {}, {}};
  const Point at = markPlace(room, {100, 100});
  CHECK(contains(room.outline, at));
}

TEST_CASE("a finding on the page as a whole or in no panel has no mark") {
  const Typesetter typesetter;
  CHECK(findingPlaces(slanted(), {inPanel(0), inPanel(9)}, typesetter).empty());
}

}  // namespace tw
