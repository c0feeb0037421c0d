#include "compose/shortlist.h"

#include "compose/layout_of.h"
#include "compose/small_page.h"
#include "geometry/polygon.h"

namespace tw {

namespace {

/// The small page's layout, pushed aside by that much, so often.
struct Staged {
  explicit Staged(const SmallPage& page) {
    for (const RoughPanel& panel : page.rough.panels) choices.push_back(panel.staging.choice);
  }
  void add(const SmallPage& page, double pushMm, Treatment treatment, double cost) {
    Rough rough = page.rough;
    for (RoughPanel& panel : rough.panels) panel.outline = moved(panel.outline, {pushMm, 0});
    LayoutCandidate candidate;
    candidate.layout = layoutOf(rough, page.wishes());
    candidate.layout.treatment = treatment;
    search.kept.push_back(std::move(candidate));
    list.push_back({search.kept.size() - 1, choices, cost});
  }
  std::vector<std::size_t> shortest(const SmallPage& page, std::size_t most,
                                    const std::vector<Measured>& unlike) const {
    std::vector<std::size_t> out;
    for (const StagedLayout& one :
         shortlist(list, search, most, {&page.wishes().sheet, 9, &unlike}))
      out.push_back(one.layout);
    return out;
  }

  std::vector<StagingChoice> choices;
  LayoutSearch search;
  std::vector<StagedLayout> list;
};

}  // namespace

TEST_CASE("no treatment takes more than half of the shortlist unless it is the only one") {
  SmallPage page;
  Staged staged(page);
  for (int i = 0; i < 4; ++i) staged.add(page, i * 20.0, Treatment::Plain, i);
  CHECK(staged.shortest(page, 4, {}) == std::vector<std::size_t>{0, 1, 2, 3});
  staged.add(page, 10, Treatment::Bled, 50);
  CHECK(staged.shortest(page, 4, {}) == std::vector<std::size_t>{0, 1, 4});
}

TEST_CASE("a page like those to be avoided falls behind a dearer one that is unlike") {
  SmallPage page;
  Staged staged(page);
  staged.add(page, 0, Treatment::Plain, 5);
  staged.add(page, 70, Treatment::Plain, 6);
  CHECK(staged.shortest(page, 1, {}) == std::vector<std::size_t>{0});
  Measured there;
  there.rough = page.rough;
  there.layout = staged.search.kept[0].layout;
  CHECK(staged.shortest(page, 1, {there}) == std::vector<std::size_t>{1});
}

}  // namespace tw
