#include <doctest/doctest.h>

#include "arrange/edit_page_test.h"

namespace tw {
namespace {

PageEdit three() {
  return PageEdit(threePanels(), editSheet(), true);
}

Rect boxAfter(const PageEdit& edit, const EditMove& move, std::size_t panel) {
  return bounds(after(edit, move)[panel].outline);
}

TEST_CASE("width and height move the border on the gutter") {
  const PageEdit edit = three();
  CHECK(boxAfter(edit, edit.withWidth(0, 60), 0).max.x == doctest::Approx(70));
  CHECK(boxAfter(edit, edit.withWidth(0, 60), 1).min.x == doctest::Approx(74));
  CHECK(boxAfter(edit, edit.withWidth(1, 60), 1).min.x == doctest::Approx(90));
  CHECK(boxAfter(edit, edit.withHeight(0, 120), 2).min.y == doctest::Approx(135));
  CHECK(boxAfter(edit, edit.withHeight(2, 120), 0).max.y == doctest::Approx(105));
}

TEST_CASE("left and top move that border and a number that cannot be is cut short") {
  const PageEdit edit = three();
  CHECK(boxAfter(edit, edit.withLeft(1, 90), 0).max.x == doctest::Approx(86));
  CHECK(boxAfter(edit, edit.withTop(2, 130), 1).max.y == doctest::Approx(125));
  const EditMove cut = edit.withWidth(0, 400);
  CHECK(boxAfter(edit, cut, 1).width() == doctest::Approx(20));
  CHECK_FALSE(cut.stopped.empty());
}

TEST_CASE("the number of a slanted panel is that of its box") {
  const PageEdit edit = three();
  const EditMove slant = edit.moved(*edit.handleAt({80, 10}, 0.5), {8, 0});
  const PageEdit slanted(after(edit, slant), editSheet(), true);
  const EditMove move = slanted.withWidth(0, 90);
  CHECK(boxAfter(slanted, move, 0).width() == doctest::Approx(90));
}

TEST_CASE("an inset's place moves all of it") {
  const PageEdit edit(groundPanels(), editSheet(), true);
  const EditMove move = edit.withTop(1, 100);
  REQUIRE(move.panels.size() == 1);
  CHECK(boxAfter(edit, move, 1) == Rect{{10, 100}, {70, 150}});
}

TEST_CASE("a side is switched to the bleed and back to the live area") {
  const PageEdit edit = three();
  const auto on = edit.withBleed(0, PageSide::Top, true);
  REQUIRE(on);
  REQUIRE(on->panels.size() == 1);
  CHECK(on->panels[0].bleeds);
  CHECK(boxAfter(edit, *on, 0).min.y == doctest::Approx(-3));
  const PageEdit bled(after(edit, *on), editSheet(), true);
  CHECK(bled.bleeds(0, PageSide::Top));
  CHECK_FALSE(bled.bleeds(0, PageSide::Left));
  const auto off = bled.withBleed(0, PageSide::Top, false);
  REQUIRE(off);
  CHECK(after(bled, *off) == std::vector(edit.panels()));
}

TEST_CASE("a side with a panel beyond it cannot bleed and the answer says which") {
  const PageEdit edit = three();
  CHECK_FALSE(edit.canBleed(0, PageSide::Right));
  CHECK(edit.canBleed(0, PageSide::Left));
  const auto no = edit.withBleed(0, PageSide::Right, true);
  REQUIRE_FALSE(no);
  CHECK(no.error().front().sentence == "Panel 1 cannot bleed there: panel 2 stands on its right.");
}

TEST_CASE("a ground bleeds whatever lies on it") {
  const PageEdit edit(groundPanels(), editSheet(), true);
  for (const PageSide side : kPageSides) CHECK(edit.canBleed(0, side));
}

}  // namespace
}  // namespace tw
