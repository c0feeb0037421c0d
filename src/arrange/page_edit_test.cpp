#include "arrange/page_edit.h"

#include <doctest/doctest.h>
#include <rapidcheck.h>

#include <algorithm>
#include <cmath>

#include "arrange/edit_page_test.h"

namespace tw {
namespace {

/// Distances between the borders of every gutter part, measured by points and lines.
std::vector<double> gutterWidths(const PageEdit& edit, const std::vector<EditPanel>& panels) {
  std::vector<double> out;
  for (const EditLine& line : edit.lines()) {
    if (!line.gutter || line.joined) continue;  // of joined parts each may move alone
    const PanelSide first = line.sides.front();
    const SideLine own = sideLine(panels[first.panel].outline, first.side);
    for (const PanelSide& other : line.sides) {
      const SideLine far = sideLine(panels[other.panel].outline, other.side);
      out.push_back(std::abs(dot(far.a - own.a, own.out)));
      out.push_back(std::abs(dot(far.b - own.a, own.out)));
    }
  }
  return out;
}

double largestOverlap(const std::vector<EditPanel>& panels) {
  double largest = 0;
  for (std::size_t i = 0; i < panels.size(); ++i)
    for (std::size_t j = i + 1; j < panels.size(); ++j)
      if (panels[i].ground == panels[j].ground)
        largest = std::max(largest, area(common({panels[i].outline}, {panels[j].outline})));
  return largest;
}

bool keepsSizes(const PageEdit& edit, const std::vector<EditPanel>& panels) {
  const Sheet sheet = editSheet();
  const auto seen = [&](const EditPanel& panel) {
    return bounds(common({panel.outline}, {polygonOf(sheet.trimRect())}));
  };
  for (std::size_t i = 0; i < panels.size(); ++i) {
    const Rect was = seen(edit.panels()[i]), is = seen(panels[i]), all = bounds(panels[i].outline);
    // The grid of the booleans is 1/10000 mm.
    if (is.width() < std::min(sheet.leastPanelWidth, was.width()) - 3e-4) return false;
    if (is.height() < std::min(sheet.leastPanelHeight, was.height()) - 3e-4) return false;
    if (!isConvex(panels[i].outline)) return false;
    if (!sheet.bleedRect().outset(1e-5).contains(all.min) ||
        !sheet.bleedRect().outset(1e-5).contains(all.max))
      return false;
  }
  return true;
}

double farthest(const std::vector<EditPanel>& a, const std::vector<EditPanel>& b) {
  double out = 0;
  for (std::size_t i = 0; i < a.size(); ++i)
    for (std::size_t k = 0; k < a[i].outline.points.size(); ++k)
      out = std::max(out, (a[i].outline.points[k] - b[i].outline.points[k]).length());
  return out;
}

/// No limit is broken to begin with: a page that is worse may be mended but not made worse again.
bool isSound(const PageEdit& edit) {
  const Sheet sheet = editSheet();
  const auto& panels = edit.panels();
  for (std::size_t i = 0; i < panels.size(); ++i) {
    const Rect seen = bounds(panels[i].outline);
    if (seen.width() < sheet.leastPanelWidth || seen.height() < sheet.leastPanelHeight)
      return false;
    for (std::size_t j = i + 1; j < panels.size(); ++j)
      if (panels[i].ground == panels[j].ground &&
          spareGap(panels[i].outline, panels[j].outline, sheet) < -1e-6)
        return false;
  }
  return true;
}

/// A page, one of its handles and an offset for it.
struct Drag {
  PageEdit edit;
  std::size_t handle = 0;
  Vector offset;
};

Drag randomDrag(double most) {
  const auto seed = *rc::gen::arbitrary<std::uint32_t>();
  Drag out{PageEdit(randomPanels(seed), editSheet(), true), 0, {}};
  out.handle = *rc::gen::inRange<std::size_t>(0, out.edit.handles().size());
  const auto by = rc::gen::inRange(-1000, 1000);
  out.offset = Vector{*by / 1000.0, *by / 1000.0} * most;
  return out;
}

TEST_CASE("no drag makes panels overlap or too small or leave the bleed") {
  CHECK(rc::check("limits hold", [] {
    const Drag drag = randomDrag(90);
    const double snap = *rc::gen::element(0.0, 2.0);
    const auto page = after(drag.edit, drag.edit.moved(drag.handle, drag.offset, snap));
    RC_ASSERT(largestOverlap(page) < 0.02);
    RC_ASSERT(keepsSizes(drag.edit, page));
  }));
}

TEST_CASE("gutters stay as wide as they were unless a whole inset is moved") {
  CHECK(rc::check("widths kept", [] {
    const Drag drag = randomDrag(60);
    RC_PRE(drag.edit.handles()[drag.handle].kind != HandleKind::Inset);
    const auto page = after(drag.edit, drag.edit.moved(drag.handle, drag.offset, 2));
    const auto was = gutterWidths(drag.edit, drag.edit.panels());
    const auto is = gutterWidths(drag.edit, page);
    for (std::size_t i = 0; i < was.size(); ++i) RC_ASSERT(std::abs(was[i] - is[i]) < 1e-6);
  }));
}

TEST_CASE("there and back is where it was") {
  CHECK(rc::check("invertible", [] {
    const Drag drag = randomDrag(8);
    RC_PRE(isSound(drag.edit));
    const EditHandle& handle = drag.edit.handles()[drag.handle];
    const EditMove there = drag.edit.moved(drag.handle, drag.offset);
    const PageEdit moved(after(drag.edit, there), editSheet(), true);
    // Borders that came to lie on one line are one handle now: then it is another drag.
    RC_PRE(moved.handles().size() == drag.edit.handles().size());
    const EditHandle& same = moved.handles()[drag.handle];
    RC_PRE(same.kind == handle.kind &&
           moved.lines()[same.line].sides == drag.edit.lines()[handle.line].sides);
    const EditMove back = moved.moved(drag.handle, -there.offset);
    RC_ASSERT(back.stopped == "");
    RC_ASSERT(farthest(after(moved, back), drag.edit.panels()) <
              2e-3);  // slants are cut to 1/1000 mm
  }));
}

TEST_CASE("a drag of nothing changes nothing") {
  for (std::uint64_t seed = 0; seed < 20; ++seed) {
    const PageEdit edit(randomPanels(seed), editSheet(), true);
    for (std::size_t h = 0; h < edit.handles().size(); ++h)
      CHECK(farthest(after(edit, edit.moved(h, {})), edit.panels()) < 1e-9);
  }
}

TEST_CASE("a tier's gutter moves all panels on both sides of it") {
  const PageEdit edit(threePanels(), editSheet(), true);
  const EditMove move = edit.moved(*edit.handleAt({40, 120}, 1), {3, 10});
  CHECK(move.panels.size() == 3);
  CHECK(move.offset == Vector{0, 10});
  CHECK(bounds(move.panels[0].outline).max.y == doctest::Approx(127.5));
  CHECK(bounds(move.panels[2].outline).min.y == doctest::Approx(132.5));
}

TEST_CASE("a gutter stops at the least panel and says so") {
  const PageEdit edit(threePanels(), editSheet(), true);
  const EditMove move = edit.moved(*edit.handleAt({40, 120}, 1), {0, 200});
  CHECK(move.offset.y == doctest::Approx(230 - 18 - 122.5));
  CHECK(move.stopped == "Panel 3 would be lower than the sheet's least, 18 mm.");
}

TEST_CASE("the end of a gutter turns it about its other end") {
  const PageEdit edit(threePanels(), editSheet(), true);
  const auto end = edit.handleAt({10, 120}, 0.5);
  REQUIRE(end);
  REQUIRE(edit.handles()[*end].kind == HandleKind::GutterEnd);
  const EditMove move = edit.moved(*end, {5, 12});
  const PageEdit turned(after(edit, move), editSheet(), true);
  const auto line = std::ranges::find_if(
      turned.lines(), [](const EditLine& l) { return l.gutter && std::abs(l.across.y) > 0.5; });
  REQUIRE(line != turned.lines().end());
  CHECK(line->from.y == doctest::Approx(132));
  CHECK(line->to.y == doctest::Approx(120));
  CHECK(line->from.x == doctest::Approx(10));
}

TEST_CASE("a nearly straight gutter rests straight") {
  const PageEdit edit(threePanels(), editSheet(), true);
  const EditMove slanted = edit.moved(*edit.handleAt({10, 120}, 0.5), {0, 9});
  const PageEdit next(after(edit, slanted), editSheet(), true);
  const auto end = next.handleAt({10, 129}, 0.5);
  REQUIRE(end);
  const EditMove back = next.moved(*end, {0, -8.2}, 1.5);
  REQUIRE(back.snaps.size() == 1);
  CHECK(back.snaps[0].to == SnapTo::Straight);
  CHECK(farthest(after(next, back), edit.panels()) < 1e-6);
}

TEST_CASE("a corner takes both its borders along") {
  const PageEdit edit(threePanels(), editSheet(), true);
  const auto corner = edit.handleAt({78, 117.5}, 0.5);
  REQUIRE(corner);
  const auto page = after(edit, edit.moved(*corner, {-6, 9}));
  CHECK(bounds(page[0].outline).max == Point{72, 126.5});
  CHECK(bounds(page[1].outline).min.x == doctest::Approx(76));
  CHECK(bounds(page[2].outline).min.y == doctest::Approx(131.5));
}

TEST_CASE("a corner goes on along one border when the other stops") {
  const PageEdit edit(threePanels(), editSheet(), true);
  const EditMove move = edit.moved(*edit.handleAt({78, 117.5}, 0.5), {-100, 9});
  CHECK(move.offset.x == doctest::Approx(-48));
  CHECK(move.offset.y == doctest::Approx(9));
  CHECK_FALSE(move.stopped.empty());
}

TEST_CASE("a tier keeps its height when it is moved") {
  const PageEdit edit({box(10, 10, 150, 75), box(10, 80, 150, 150), box(10, 155, 150, 230)},
                      editSheet(), true);
  const auto tier = std::ranges::find(edit.handles(), HandleKind::Tier, &EditHandle::kind);
  REQUIRE(tier != edit.handles().end());
  const auto index = static_cast<std::size_t>(tier - edit.handles().begin());
  const auto page = after(edit, edit.moved(index, {4, -11}));
  CHECK(bounds(page[0].outline).max.y == doctest::Approx(64));
  CHECK(bounds(page[1].outline).min.y == doctest::Approx(69));
  CHECK(bounds(page[1].outline).height() == doctest::Approx(70));
  CHECK(bounds(page[2].outline).min.y == doctest::Approx(144));
}

TEST_CASE("an inset moves whole and keeps a gutter to its neighbour") {
  const PageEdit edit(groundPanels(), editSheet(), true);
  const auto inset = edit.handleAt({40, 205}, 1);
  REQUIRE(inset);
  CHECK(edit.handles()[*inset].kind == HandleKind::Inset);
  CHECK(edit.moved(*inset, {20, 0}).offset.x == doctest::Approx(0));
  const EditMove up = edit.moved(*inset, {0, -90.5}, 1.5);
  REQUIRE(up.panels.size() == 1);
  CHECK(up.panels[0].panel == 1);
}

TEST_CASE("a border dragged to the bleed bleeds and one dragged back does not") {
  const PageEdit edit(threePanels(), editSheet(), true);
  const auto left = edit.handleAt({10, 60}, 1);
  REQUIRE(left);
  const EditMove out = edit.moved(*left, {-12.4, 0}, 2);
  REQUIRE(out.panels.size() == 1);
  CHECK(out.panels[0].bleeds);
  CHECK(bounds(out.panels[0].outline).min.x == doctest::Approx(-3));
  const PageEdit bled(after(edit, out), editSheet(), true);
  const EditMove back = bled.moved(*bled.handleAt({-3, 60}, 1), {13, 0});
  REQUIRE(back.panels.size() == 1);
  CHECK_FALSE(back.panels[0].bleeds);
}

}  // namespace
}  // namespace tw
