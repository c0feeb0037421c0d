#include "read/word_spread.h"

#include <doctest/doctest.h>

namespace tw {

TEST_CASE("words over panels are summed and their spread is the standard deviation") {
  // 2, 4, 4, 4, 5, 5, 7, 9: mean 5, standard deviation 2; the usual textbook example, from memory.
  const WordSpread words = wordSpreadOf({2, 4, 4, 4, 5, 5, 7, 9});
  CHECK(words.total == 40);
  CHECK(words.mean == 5);
  CHECK(words.spread == doctest::Approx(2));
  CHECK(words.most == 9);
  CHECK(words.mostAt == 8);
  CHECK(words.silent == 0);
}

TEST_CASE("a silent page has no fullest panel") {
  const WordSpread words = wordSpreadOf({0, 0, 0});
  CHECK(words.mostAt == 0);
  CHECK(words.silent == 3);
  CHECK(words.spread == 0);
  CHECK(wordSpreadOf({}).mean == 0);
}

}  // namespace tw
