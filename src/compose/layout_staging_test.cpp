#include "compose/layout_staging.h"

#include "compose/layout_of.h"
#include "compose/small_page.h"

namespace tw {

namespace {

std::vector<StagedLayout> several(const SmallPage& page, std::size_t most) {
  const Layout layout = layoutOf(page.rough, page.wishes());
  const PinsMet pins = pinsMet(page.wishes());
  StagingTable table(page.wishes(), page.workshop().stager, pins);
  Progress progress;
  table.prepare({&layout}, 1, progress);
  return LayoutStaging(page.wishes(), page.workshop().rules, table, layout).several(most);
}

}  // namespace

TEST_CASE("several stagings of one layout all differ and the first is the one alone") {
  SmallPage page;
  const auto one = several(page, 1), many = several(page, 8);
  REQUIRE(one.size() == 1);
  REQUIRE(many.size() == 8);
  CHECK(one[0].choices == many[0].choices);
  CHECK(one[0].cost == doctest::Approx(many[0].cost));
  for (std::size_t i = 0; i < many.size(); ++i)
    for (std::size_t k = 0; k < i; ++k) CHECK(many[i].choices != many[k].choices);
}

TEST_CASE("no later staging costs less than the first by more than a change of rhythm") {
  // The chains are exact but for the page-wide rhythm, which picks among the four best.
  SmallPage page;
  const auto many = several(page, 8);
  const double rhythm = page.workshop().rules.weight(RuleId::Rhythm) * 2;
  for (const StagedLayout& other : many) CHECK(other.cost >= many[0].cost - rhythm);
}

TEST_CASE("a panel with a pinned staging has no other choice") {
  SmallPage page;
  page.page().pins.stagings["p4-2"] = page.rough.panels[1].staging;
  for (const StagedLayout& one : several(page, 5))
    CHECK(one.choices[1] == page.rough.panels[1].staging.choice);
}

}  // namespace tw
