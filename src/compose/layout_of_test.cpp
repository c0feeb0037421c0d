#include "compose/layout_of.h"

#include "compose/small_page.h"

namespace tw {

TEST_CASE("every treatment is found by the name that roughs give it") {
  for (const Treatment t :
       {Treatment::Plain, Treatment::Bled, Treatment::Ground, Treatment::Slanted})
    CHECK(treatmentNamed(std::string(nameOf(t))) == t);
}

TEST_CASE("a rough's layout has its outlines and measures its dominant panel") {
  SmallPage page;
  const Layout layout = layoutOf(page.rough, page.wishes());
  REQUIRE(layout.panels.size() == 3);
  for (std::size_t i = 0; i < 3; ++i)
    CHECK(layout.panels[i].outline == page.rough.panels[i].outline);
  CHECK(layout.tree == page.rough.arrangement);
  CHECK(layout.dominantShare > 0.2);
}

TEST_CASE("a rough of another state of the script does not show the page") {
  SmallPage page;
  CHECK(showsBeatsOf(page.rough, page.wishes()));
  Rough other = page.rough;
  other.panels.pop_back();
  CHECK_FALSE(showsBeatsOf(other, page.wishes()));
}

}  // namespace tw
