#include <doctest/doctest.h>

#include <algorithm>

#include "arrange/edit_page_test.h"

namespace tw {
namespace {

long count(const PageEdit& edit, HandleKind kind, bool usual = true) {
  return std::ranges::count_if(
      edit.handles(), [&](const EditHandle& h) { return h.kind == kind && h.usual == usual; });
}

TEST_CASE("a tier's gutter is usually taken whole and an upright one by its part") {
  const PageEdit edit(fourPanels(), editSheet(), true);
  CHECK(count(edit, HandleKind::Gutter) == 3);
  CHECK(count(edit, HandleKind::Gutter, false) == 3);
  CHECK(count(edit, HandleKind::GutterEnd) == 6);
  CHECK(count(edit, HandleKind::Corner) == 16);
  CHECK(count(edit, HandleKind::Border) == 8);
}

TEST_CASE("a tier between two gutters can be taken as a whole") {
  const PageEdit edit({box(10, 10, 150, 75), box(10, 80, 150, 150), box(10, 155, 150, 230)},
                      editSheet(), true);
  CHECK(count(edit, HandleKind::Tier) == 1);
  CHECK(count(PageEdit(fourPanels(), editSheet(), true), HandleKind::Tier) == 0);
}

TEST_CASE("insets can be taken whole and the ground cannot") {
  CHECK(count(PageEdit(groundPanels(), editSheet(), true), HandleKind::Inset) == 2);
  CHECK(count(PageEdit(fourPanels(), editSheet(), true), HandleKind::Inset) == 0);
}

TEST_CASE("the hand finds the nearest place before any line and parts only when asked") {
  const PageEdit edit(fourPanels(), editSheet(), true);
  const auto at = [&](Point p, bool unusual = false) {
    const auto found = edit.handleAt(p, 2, unusual);
    return found ? &edit.handles()[*found] : nullptr;
  };
  REQUIRE(at({78, 117}));
  CHECK(at({78, 117})->kind == HandleKind::Corner);
  REQUIRE(at({40, 120}));
  CHECK(at({40, 120})->kind == HandleKind::Gutter);
  CHECK(at({40, 120})->to.x == doctest::Approx(150));
  CHECK(at({40, 120}, true)->to.x == doctest::Approx(78));
  CHECK(at({10.2, 120})->kind == HandleKind::GutterEnd);
  CHECK(at({40, 60}) == nullptr);
}

TEST_CASE("a handle is found again after its move") {
  const PageEdit edit(fourPanels(), editSheet(), true);
  const auto gutter = edit.handleAt({40, 120}, 1);
  REQUIRE(gutter);
  const PageEdit next(after(edit, edit.moved(*gutter, {0, 12})), editSheet(), true);
  const auto again = next.sameHandle(edit.handles()[*gutter]);
  REQUIRE(again);
  CHECK(next.handles()[*again].from.y == doctest::Approx(132));
}

}  // namespace
}  // namespace tw
