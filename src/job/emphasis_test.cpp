// Marks as CommonMark 0.30 has them for the plain cases (sections 6.2 and its examples, from
// memory); nesting is not told apart.
#include "job/emphasis.h"

#include <doctest/doctest.h>

using namespace tw;

TEST_CASE("one mark or two, stars or underscores, stress the words between") {
  for (const char* text : {"I *never* said", "I **never** said", "I _never_ said",
                           "I __never__ said", "I ***never*** said"}) {
    CHECK(withStars(emphasisRuns(text)) == "I *never* said");
    CHECK(withoutStress(text) == "I never said");
  }
  CHECK(withStars(emphasisRuns("**Not one word!**")) == "*Not one word!*");
  CHECK(withStars(emphasisRuns("\u201c_Listen._\u201d")) == "\u201c*Listen.*\u201d");
}

TEST_CASE("marks without a partner, between spaces or inside words are text") {
  for (const char* text : {"2 * 3", "2 * 3 * 4", "snake_case_name", "*", "**", "a *b", "a* b", "",
                           "*one\ntwo*", "** **"}) {
    CHECK(withoutStress(text) == text);
  }
}

TEST_CASE("stress written with stars reads back the same") {
  const std::string text = "*One* two *three four*, *five*-six";
  CHECK(withStars(emphasisRuns(text)) == text);
  CHECK(emphasisRuns(text).size() == 6);
}
