#include "job/amount_words.h"

#include <doctest/doctest.h>

namespace tw {

TEST_CASE("amounts keep no more digits than mean something") {
  CHECK(amountInWords(7.94, "mm") == "7.9 mm");
  CHECK(amountInWords(59.6, "%") == "60 %");
  CHECK(amountInWords(3, "places") == "3 places");
  CHECK(amountInWords(1.27, "") == "1.3");
}

TEST_CASE("one of a thing is named in the singular, seconds stay seconds") {
  CHECK(amountInWords(1, "joints") == "1 joint");
  CHECK(amountInWords(0, "joints") == "0 joints");
  CHECK(amountInWords(1, "s") == "1 s");
}

}  // namespace tw
