#include "arrange/edit_lines.h"

#include <doctest/doctest.h>

#include <algorithm>

#include "arrange/edit_page_test.h"

namespace tw {
namespace {

std::vector<EditLine> gutters(const std::vector<EditPanel>& panels, bool joined) {
  std::vector<EditLine> out;
  for (const EditLine& line : editLines(panels, editSheet()))
    if (line.gutter && line.joined == joined) out.push_back(line);
  return out;
}

TEST_CASE("normals look away from the panel whichever way its outline runs") {
  EditPanel panel = box(10, 10, 50, 40);
  for (int way = 0; way < 2; ++way) {
    for (std::size_t s = 0; s < 4; ++s) {
      const SideLine line = sideLine(panel.outline, s);
      CHECK(dot(line.middle() - Point{30, 25}, line.out) > 0);
    }
    std::ranges::reverse(panel.outline.points);
  }
}

TEST_CASE("crossing gutters give four parts and two joined lines") {
  CHECK(gutters(fourPanels(), false).size() == 4);
  const auto joined = gutters(fourPanels(), true);
  REQUIRE(joined.size() == 2);
  for (const EditLine& line : joined) CHECK(line.sides.size() == 4);
}

TEST_CASE("a gutter under two panels carries both and the one below") {
  const auto parts = gutters(threePanels(), false);
  REQUIRE(parts.size() == 2);
  const auto flat = std::ranges::find_if(parts, [](const EditLine& l) { return l.across.y != 0; });
  REQUIRE(flat != parts.end());
  CHECK(flat->sides.size() == 3);
  CHECK(flat->from.x == doctest::Approx(10));
  CHECK(flat->to.x == doctest::Approx(150));
  CHECK(flat->from.y == doctest::Approx(120));
}

TEST_CASE("a staggered gutter whose corners are nearer than a gutter is one line") {
  // The upper gutter stands 2 mm right of the lower one: neither part of the flat one can move
  // alone.
  std::vector<EditPanel> panels{box(10, 10, 80, 117.5), box(84, 10, 150, 117.5),
                                box(10, 122.5, 78, 230), box(82, 122.5, 150, 230)};
  const auto parts = gutters(panels, false);
  CHECK(std::ranges::count_if(parts, [](const EditLine& l) { return l.sides.size() == 4; }) == 1);
}

TEST_CASE("borders wide apart are no gutter") {
  CHECK(gutters({box(10, 10, 60, 100), box(90, 10, 150, 100)}, false).empty());
}

TEST_CASE("insets have no gutter with their ground") {
  const auto parts = gutters(groundPanels(), false);
  REQUIRE(parts.size() == 1);
  CHECK(parts[0].sides.size() == 2);
}

TEST_CASE("points on a straight border and doubled points are dropped") {
  const Polygon untidy{{{0, 0}, {5, 0}, {10, 0}, {10, 0}, {10, 8}, {0, 8}, {0, 0}}};
  CHECK(cleaned(untidy) == Polygon{{{0, 0}, {10, 0}, {10, 8}, {0, 8}}});
}

TEST_CASE("parallel lines do not meet") {
  CHECK_FALSE(meeting({0, 0}, {1, 0}, {0, 5}, {-1, 0}));
  CHECK(*meeting({0, 0}, {1, 0}, {7, 5}, {0, 1}) == Point{7, 0});
}

}  // namespace
}  // namespace tw
