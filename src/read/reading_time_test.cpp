#include "read/reading_time.h"

#include <doctest/doctest.h>
#include <rapidcheck.h>

namespace tw {
namespace {

SeenPanel panelWith(int words, int characters) {
  SeenPanel panel;
  panel.elements.push_back({SeenKind::Copy, {{0, 0}, {10, 10}}, "c", words, characters, false});
  return panel;
}

// Brysbaert 2019, doi:10.1016/j.jml.2019.104047; from memory, high.
TEST_CASE("a thousand words of fiction and of non-fiction take the published times") {
  CHECK(1000 / (copySeconds(1000, 4200) / 60) == doctest::Approx(260));
  CHECK(1000 / (copySeconds(1000, 4600) / 60) == doctest::Approx(238).epsilon(0.01));
}

// Self-paced panels without words, mean 1.5 s: Cohn, in the author's own words.
TEST_CASE("a wordless panel takes a second and a half") {
  CHECK(panelSeconds(SeenPanel{}) == doctest::Approx(1.5));
}

TEST_CASE("words whose letters are not known count as of mean length") {
  CHECK(copySeconds(10, 0) == doctest::Approx(copySeconds(10, 42)));
}

TEST_CASE("longer words take longer") {
  CHECK(copySeconds(10, 60) > copySeconds(10, 40));
}

TEST_CASE("adding words never shortens a panel or a page") {
  CHECK(rc::check("time grows", [] {
    const int words = *rc::gen::inRange(0, 60), more = *rc::gen::inRange(1, 20);
    const int letters = words * *rc::gen::inRange(1, 9);
    const int moreLetters = letters + more * *rc::gen::inRange(1, 9);
    const SeenPanel before = panelWith(words, letters), now = panelWith(words + more, moreLetters);
    RC_ASSERT(panelSeconds(now) > panelSeconds(before));
    SeenPage page;
    page.panels = {before, before};
    SeenPage longer = page;
    longer.panels[1] = now;
    RC_ASSERT(pageSeconds(longer) > pageSeconds(page));
  }));
}

}  // namespace
}  // namespace tw
