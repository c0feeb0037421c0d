#include "read/full_figure.h"

#include <doctest/doctest.h>

namespace tw {

TEST_CASE("the fullest uncut figure of the page counts") {
  StoryPage page;
  page.panels.resize(3);
  for (int i = 0; i < 3; ++i) page.panels[static_cast<std::size_t>(i)].number = i + 1;
  CHECK(fullFigureOn(page).isKept());  // nobody is on the page
  page.panels[0].who = {"ada"};
  CHECK_FALSE(fullFigureOn(page).isKept());
  page.panels[1].wholeShown = 0.4;
  page.panels[2].wholeShown = 0.9;
  CHECK(fullFigureOn(page).panel == 3);
  CHECK(fullFigureOn(page).isKept());
  page.panels[2].wholeShown = 0.5;
  CHECK_FALSE(fullFigureOn(page).isKept());
}

}  // namespace tw
