#include "arrange/measure_layout.h"

#include <doctest/doctest.h>

#include "geometry/polygon.h"

namespace tw {

namespace {

Layout ofBoxes(const std::vector<Rect>& boxes) {
  Layout layout;
  for (const Rect& box : boxes) layout.panels.push_back({polygonOf(box), false, false});
  return layout;
}

ArrangeRequest onPaper(std::size_t panels) {
  ArrangeRequest request;
  request.sheet.trimWidth = 170;
  request.sheet.trimHeight = 260;
  request.sheet.leastPanelWidth = request.sheet.leastPanelHeight = 20;
  request.wishes.resize(panels);
  return request;
}

}  // namespace

TEST_CASE("the dominant share is its area over all panels' area") {
  ArrangeRequest request = onPaper(2);
  request.dominant = 1;
  Layout layout = ofBoxes({{{0, 0}, {100, 50}}, {{0, 55}, {100, 205}}});
  measureShapes(request, layout);
  CHECK(layout.dominantShare == doctest::Approx(0.75));
  CHECK(layout.shortfall == 0);
}

TEST_CASE("a ground counts without the panels that lie on it") {
  ArrangeRequest request = onPaper(2);
  request.dominant = 0;
  Layout layout = ofBoxes({{{0, 0}, {170, 260}}, {{10, 10}, {95, 140}}});
  layout.panels[0].ground = true;
  measureShapes(request, layout);
  CHECK(layout.dominantShare == doctest::Approx(0.75));
}

TEST_CASE("a panel dragged under its least width falls short by that share") {
  ArrangeRequest request = onPaper(2);
  request.wishes[0].leastWidth = 40;
  Layout layout = ofBoxes({{{0, 0}, {30, 100}}, {{35, 0}, {165, 100}}});
  measureShapes(request, layout);
  CHECK(layout.shortfall == doctest::Approx(0.25));
}

TEST_CASE("a dominant share that is missed falls short by its share of the asked one") {
  ArrangeRequest request = onPaper(2);
  request.dominant = 0;
  request.leastDominantShare = 0.5;
  Layout layout = ofBoxes({{{0, 0}, {100, 40}}, {{0, 45}, {100, 105}}});
  measureShapes(request, layout);
  CHECK(layout.shortfall == doctest::Approx(0.2));
}

}  // namespace tw
