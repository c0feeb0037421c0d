#include "arrange/edit_limits.h"

#include <doctest/doctest.h>

#include "arrange/edit_page_test.h"

namespace tw {
namespace {

std::string why(std::vector<EditPanel> before, std::vector<EditPanel> after) {
  return complaint(before, after, editSheet()).value_or("");
}

TEST_CASE("each limit is told in its own sentence") {
  const auto page = threePanels();
  auto narrow = page, low = page, near = page, outside = page, folded = page;
  narrow[0].outline = box(10, 10, 29, 117.5).outline;
  low[2].outline = box(10, 213, 150, 230).outline;
  near[0].outline = box(10, 10, 79, 117.5).outline;
  outside[0].outline = box(-4, 10, 78, 117.5).outline;
  folded[0].outline = {{{78, 10}, {10, 10}, {10, 117.5}, {78, 117.5}}};
  CHECK(why(page, narrow) == "Panel 1 would be narrower than the sheet's least, 20 mm.");
  CHECK(why(page, low) == "Panel 3 would be lower than the sheet's least, 18 mm.");
  CHECK(why(page, near) == "Panels 1 and 2 would come nearer than a gutter.");
  CHECK(why(page, outside) == "Panel 1 would run out over the bleed.");
  CHECK(why(page, folded) == "Panel 1 would fold over itself.");
  CHECK(why(page, page).empty());
}

TEST_CASE("what was too small already may stay but gets no smaller") {
  const std::vector<EditPanel> small{box(10, 10, 25, 100)};
  CHECK(why(small, {box(10, 10, 25, 90)}).empty());
  CHECK_FALSE(why(small, {box(10, 10, 24, 100)}).empty());
}

TEST_CASE("a panel's size is what is left inside the trim") {
  const std::vector<EditPanel> bled{box(-3, 10, 60, 100)};
  CHECK(why(bled, {box(-3, 10, 20, 100)}).empty());
  CHECK_FALSE(why(bled, {box(-3, 10, 19, 100)}).empty());
}

TEST_CASE("borders beside a moved one stay on their lines") {
  // A slanted right border: moving the lower border slides the corner along the slant.
  std::vector<EditPanel> page{{Polygon{{{10, 10}, {80, 10}, {70, 110}, {10, 110}}}, false}};
  const auto moved = withMoved(page, {{0, 2}}, {{0, 10}, {}, 0});
  REQUIRE(moved);
  CHECK((*moved)[0].outline.points[2].x == doctest::Approx(69));
  CHECK((*moved)[0].outline.points[2].y == doctest::Approx(120));
}

TEST_CASE("only a whole side beyond the trim runs to the bleed") {
  const Sheet sheet = editSheet();
  CHECK(runsToBleed(box(-3, 10, 60, 100).outline, sheet));
  CHECK_FALSE(runsToBleed(box(0, 10, 60, 100).outline, sheet));
  CHECK_FALSE(runsToBleed({{{-3, 10}, {60, 10}, {60, 90}, {5, 90}}}, sheet));
}

}  // namespace
}  // namespace tw
