#include "compose/rough_names.h"

#include <doctest/doctest.h>

namespace tw {

namespace {

std::vector<Rough> called(const std::vector<std::string>& names) {
  std::vector<Rough> out(names.size());
  for (std::size_t i = 0; i < names.size(); ++i) out[i].name = names[i];
  return out;
}

}  // namespace

TEST_CASE("names of roughs go on with two letters after Z") {
  CHECK(roughNameAt(0) == "A");
  CHECK(roughNameAt(25) == "Z");
  CHECK(roughNameAt(26) == "AA");
  CHECK(roughNameAt(27) == "AB");
  CHECK(roughNameAt(26 + 26 * 26) == "AAA");
  for (std::size_t i = 1; i < 800; ++i) CHECK(comesBefore(roughNameAt(i - 1), roughNameAt(i)));
}

TEST_CASE("a new rough takes the first name that is free") {
  CHECK(freeRoughName({}) == "A");
  CHECK(freeRoughName(called({"A", "B", "D"})) == "C");
  CHECK(freeRoughName(called({"B"})) == "A");
}

}  // namespace tw
