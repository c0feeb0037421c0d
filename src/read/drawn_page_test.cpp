#include "read/drawn_page.h"

#include <doctest/doctest.h>

#include "read/drawn_picture_test.h"
#include "read/eye_path.h"

namespace tw {

namespace {

/// A page of 850 × 1300 px with two panels above and one below, a figure in each.
struct Drawn {
  GreyPicture picture = paper(850, 1300);
  MarkedPage marked{.name = "7", .width = 850, .height = 1300};

  Drawn() {
    for (const Rect& box :
         {Rect{{20, 20}, {410, 600}}, Rect{{430, 20}, {830, 600}}, Rect{{20, 620}, {830, 1280}}}) {
      paintBox(picture, box, 0.7f);
      marked.panels.push_back({.outline = polygonOf(box)});
      const Point c = box.centre();
      paintEllipse(picture, {c - Vector{60, 120}, c + Vector{60, 120}}, 0.1f);
    }
    paintBalloon(picture, {{60, 50}, {300, 170}}, true);
  }
  DrawnPage measured(unsigned threads = 0) const {
    return measureDrawnPage(marked, picture, {0, 1, 2}, ReadingDirection::LeftToRight, {}, threads);
  }
};

}  // namespace

TEST_CASE("a drawn page is measured like a staged one") {
  const DrawnPage page = Drawn().measured();
  REQUIRE(page.panels.size() == 3);
  CHECK(page.page.height() == doctest::Approx(kDrawnPageMm));
  for (std::size_t i = 0; i < 3; ++i) {
    const DrawnPanel& panel = page.panels[i];
    CHECK((panel.focus.at - centroid(panel.outline)).length() < 30);
    CHECK(panel.squint.rank == 1);
    CHECK_FALSE(panel.focus.marked);
  }
  CHECK(page.panels[0].attention.spots.front().kind == SeenKind::Copy);
  CHECK(page.onePicture.panels.size() == 3);
  CHECK(page.handedOn.panels.size() == 3);
}

TEST_CASE("marks of the list replace what would be proposed and places turn back into its unit") {
  Drawn drawn;
  drawn.marked.panels[1].focus = Point{500, 80};
  drawn.marked.panels[1].lead = Vector{0, 2};
  drawn.marked.panels[0].copy.push_back({.box = {{200, 400}, {390, 560}}, .count = 9});
  const DrawnPage page = drawn.measured();
  const Point focus = page.scale.inFile(page.panels[1].focus.at);
  CHECK(focus.x == doctest::Approx(500));
  CHECK(focus.y == doctest::Approx(80));
  CHECK(page.panels[1].lead.lead.direction == Vector{0, 1});
  CHECK(page.panels[0].attention.proposed.empty());
  const Rect copy = page.scale.inFile(page.panels[0].attention.marked.front().box);
  CHECK(copy.min.x == doctest::Approx(200));
}

TEST_CASE("a drawn page becomes a page that an eye can walk") {
  Drawn drawn;
  drawn.marked.panels[2].faces.push_back({{400, 850}, {450, 900}});
  const DrawnPage page = drawn.measured();
  const SeenPage seen = seenPageOf(page);
  REQUIRE(seen.panels.size() == 3);
  CHECK(seen.panels[0].words() > 0);
  CHECK(seen.panels[0].elements.front().kind == SeenKind::Copy);
  CHECK(seen.panels[2].elements.front().kind == SeenKind::Face);
  int focuses = 0;
  for (const SeenPanel& panel : seen.panels)
    for (const SeenElement& e : panel.elements) focuses += e.isFocus;
  CHECK(focuses >= 2);
  const auto model = loadEyePathModel();
  REQUIRE(model);
  const EyePath path = eyePathOf(seen, *model, 5);
  CHECK(path.fixations.size() >= 3);
}

TEST_CASE("panels are seen in their intended order and insets lie on top") {
  Drawn drawn;
  drawn.marked.panels.push_back({.outline = polygonOf(Rect{{60, 1000}, {200, 1200}})});
  const DrawnPage page = measureDrawnPage(drawn.marked, drawn.picture, {2, 3, 1, 0},
                                          ReadingDirection::RightToLeft, {});
  const SeenPage seen = seenPageOf(page);
  CHECK(seen.panels[0].outline == page.panels[2].outline);
  CHECK(seen.panels[1].layer == 1);
  CHECK(seen.panels[0].layer == 0);
  CHECK(seen.direction == ReadingDirection::RightToLeft);
}

TEST_CASE("without a size the picture's pixels are the unit and a wide page is a spread") {
  MarkedPage marked{.name = "1"};
  marked.panels.push_back({.outline = polygonOf(Rect{{10, 10}, {390, 190}})});
  const DrawnPage page = measureDrawnPage(marked, paper(400, 200), {0}, {}, {});
  CHECK(page.page.width() == doctest::Approx(kDrawnSpreadMm));
  CHECK(page.scale.inFile(Point{kDrawnSpreadMm, 0}).x == doctest::Approx(400));
}

TEST_CASE("the same page gives the same answer however many cores share it") {
  const DrawnPage a = Drawn().measured(1), b = Drawn().measured(4);
  for (std::size_t i = 0; i < a.panels.size(); ++i) {
    CHECK(a.panels[i].attention.map.value == b.panels[i].attention.map.value);
    CHECK(a.panels[i].squint.strength == b.panels[i].squint.strength);
  }
}

}  // namespace tw
