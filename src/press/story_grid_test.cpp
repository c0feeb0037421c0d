#include "press/story_grid.h"

#include <doctest/doctest.h>
#include <rapidcheck.h>

#include "press/example_story_map.h"

namespace tw {

using namespace example;

namespace {

bool isOn(const Rect& rect, const Rect& paper) {
  return paper.contains(rect.min) && paper.contains(rect.max);
}

}  // namespace

TEST_CASE("facing pages touch and page one stands alone at the left margin") {
  const StoryMap map = storyMap(8);
  const StoryGrid grid(map, 0, 5);
  CHECK(grid.slot(2).max.x == doctest::Approx(grid.slot(3).min.x));
  CHECK(grid.slot(1).max.x < grid.slot(2).min.x - 5);
  CHECK(grid.slot(3).max.x < grid.slot(4).min.x - 5);
  CHECK(grid.turnAfter(3).x > grid.slot(3).max.x);
  CHECK(grid.turnAfter(3).x < grid.slot(4).min.x);
}

TEST_CASE("a story read to the left lies mirrored") {
  StoryMap map = storyMap(8);
  map.direction = ReadingDirection::RightToLeft;
  const StoryGrid grid(map, 0, 5);
  CHECK(grid.slot(3).max.x == doctest::Approx(grid.slot(2).min.x));
  CHECK(grid.slot(1).min.x > grid.slot(2).max.x);
  CHECK(grid.column(map.pages[3], 0).from > grid.column(map.pages[3], 1).from);
  CHECK(grid.turnAfter(3).x < grid.slot(3).min.x);
}

TEST_CASE("panels share the width of their page and those of a spread both pages") {
  StoryMap map = storyMap(8);
  map.pages.erase(map.pages.begin() + 2);
  map.pages[1].spread = true;
  const StoryGrid grid(map, 0, 5);
  CHECK(grid.column(map.pages[0], 0).from == doctest::Approx(grid.slot(1).min.x));
  CHECK(grid.column(map.pages[0], 3).to == doctest::Approx(grid.slot(1).max.x));
  CHECK(grid.column(map.pages[1], 3).to == doctest::Approx(grid.slot(3).max.x));
}

TEST_CASE("everything stays on the paper and in its order for stories of any length") {
  CHECK(rc::check("on the paper", [] {
    const StoryMap map = storyMap(*rc::gen::inRange(1, 70));
    for (const auto& [first, pairs] : storySheets(map)) {
      const StoryGrid grid(map, first, pairs);
      for (const StoryMapPage& page : map.pages) {
        if (!grid.holds(page.number)) continue;
        RC_ASSERT(isOn(grid.slot(page.number), StoryGrid::paper()));
        RC_ASSERT(grid.slot(page.number).width() > 15);  // still legible
        const int row = grid.rowOf(page.number);
        RC_ASSERT(grid.slot(page.number).max.y < grid.numberLine(row));
        RC_ASSERT(grid.numberLine(row) < grid.lane(row, StoryLane::Time).min.y);
      }
      RC_ASSERT(isOn(grid.list(), StoryGrid::paper()));
      RC_ASSERT(grid.list().height() > 20);
    }
  }));
}

TEST_CASE("every pair is on one sheet and two dozen pages are on a single one") {
  CHECK(storySheets(storyMap(24)).size() == 1);
  CHECK(storySheets(StoryMap{}).empty());
  const auto sheets = storySheets(storyMap(40));
  REQUIRE(sheets.size() == 2);
  CHECK(sheets[0].first == 0);
  CHECK(sheets[1].first == sheets[0].second);
  CHECK(sheets[0].second + sheets[1].second == 21);
}

}  // namespace tw
