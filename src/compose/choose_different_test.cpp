#include "compose/choose_different.h"

#include "compose/layout_of.h"
#include "compose/small_page.h"
#include "geometry/polygon.h"

namespace tw {

namespace {

Measured shown(const Rough& rough, const SmallPage& page) {
  Measured m;
  m.rough = rough;
  m.layout = layoutOf(rough, page.wishes());
  return m;
}

Measured pushed(const SmallPage& page, double mm) {
  Rough rough = page.rough;
  for (RoughPanel& panel : rough.panels) panel.outline = moved(panel.outline, {mm, 0});
  return shown(rough, page);
}

}  // namespace

TEST_CASE("a page is the same until a border a pose or a choice differs") {
  SmallPage page;
  const Measured here = shown(page.rough, page);
  CHECK(isSamePage(here, here));
  CHECK(isSamePage(here, pushed(page, 0.2)));
  CHECK_FALSE(isSamePage(here, pushed(page, 3)));
  Rough other = page.rough;
  other.panels[2].staging.choice.mirrored = !other.panels[2].staging.choice.mirrored;
  CHECK_FALSE(isSamePage(here, shown(other, page)));
  other = page.rough;
  other.panels[0].staging.figures[0].turnsDeg["head"] = {0, 0, 20};
  CHECK_FALSE(isSamePage(here, shown(other, page)));
}

TEST_CASE("what is to be avoided counts as chosen before the first") {
  SmallPage page;
  // The near one is a little cheaper than the far one.
  std::vector<Measured> roughs{shown(page.rough, page), pushed(page, 60)};
  roughs[0].rough.score = 10;
  roughs[1].rough.score = 10.5;
  const Sheet& sheet = page.wishes().sheet;
  CHECK(chooseDifferent(roughs, sheet, 1, 9) == std::vector<std::size_t>{0});
  CHECK(chooseDifferent(roughs, sheet, 1, 9, {shown(page.rough, page)}) ==
        std::vector<std::size_t>{1});
}

TEST_CASE("a planned page is as unlike another as the drawn one") {
  SmallPage page;
  const Measured a = shown(page.rough, page), b = pushed(page, 25);
  std::vector<StagingChoice> choices;
  for (const RoughPanel& panel : a.rough.panels) choices.push_back(panel.staging.choice);
  const Sheet& sheet = page.wishes().sheet;
  CHECK(unlikeness(a.layout, choices, b, sheet) == unlikeness(a, b, sheet));
  CHECK(unlikeness(a, b, sheet) > 0);
}

}  // namespace tw
