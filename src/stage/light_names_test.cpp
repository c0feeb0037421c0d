#include "stage/light_names.h"

#include <doctest/doctest.h>

#include <set>

#include "stage/light_wish.h"

namespace tw {

TEST_CASE("every light of the list is one that can be asked for, each once") {
  const auto names = lightNames();
  const auto known = LightWords::load();
  REQUIRE(names);
  REQUIRE(known);
  CHECK(names->size() > 3);
  std::set<std::string> seen;
  for (const LightName& light : *names) {
    CHECK(seen.insert(light.name).second);
    CHECK_FALSE(light.title.empty());
    CHECK(lightAsked(light.name, *known).has_value());
  }
}

}  // namespace tw
