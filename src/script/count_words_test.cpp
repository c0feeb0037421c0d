#include "script/count_words.h"

#include <doctest/doctest.h>

using tw::WordCounter;

TEST_CASE("words are counted by the boundaries of Unicode") {
  WordCounter counter;
  // The worked example of UAX #29, section 4, table 2: nine words between the boundaries.
  CHECK(counter.count("The quick (\u201cbrown\u201d) fox can\u2019t jump 32.3 feet, right?") == 9);
}

TEST_CASE("dashes, dots and emoji are no words") {
  WordCounter counter;
  CHECK(counter.count("-- \u2026 \u2014 ... \U0001F514 !") == 0);
  CHECK(counter.count("Wait -- don't\u2026") == 2);
  CHECK(counter.count("") == 0);
}
