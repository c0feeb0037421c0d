#include <doctest/doctest.h>

#include <string>

#include "read/next_panel.h"

namespace tw {
namespace {

TEST_CASE("what is left of the readers is shared by the panels that are not named") {
  Choices choices;
  choices.add(1, 0.3, "b");
  choices.add(0, 0.6, "a");
  choices.close(allOf(4), 0.01);
  CHECK(choices.list[0].panel == 0);
  CHECK(choices.shareOf(0) == doctest::Approx(0.6));
  CHECK(choices.shareOf(2) == doctest::Approx(0.05));
  CHECK(choices.shareOf(3) == doctest::Approx(0.05));
  CHECK(choices.shareOf(4) == 0);
  CHECK(choices.others == (only(2) | only(3)));
}

TEST_CASE("no unread panel is impossible and all shares make one") {
  Choices choices;
  choices.add(0, 0.7, "");
  choices.add(1, 0.3, "");
  choices.close(allOf(3), 0.02);
  CHECK(choices.shareOf(2) == doctest::Approx(0.02));
  CHECK(choices.shareOf(0) + choices.shareOf(1) + choices.shareOf(2) == doctest::Approx(1));
}

TEST_CASE("with nothing else to read the named panels have all readers") {
  Choices choices;
  choices.add(0, 0.4, "");
  choices.add(1, 0.4, "");
  choices.close(allOf(2), 0.02);
  CHECK(choices.shareOf(0) == doctest::Approx(0.5));
}

TEST_CASE("the cause against a panel is its own or else that of the best") {
  Choices choices;
  choices.add(0, 0.6, "wide gap");
  choices.add(1, 0.3, "overlap");
  choices.close(allOf(3), 0.01);
  CHECK(std::string(choices.causeAgainst(1)) == "overlap");
  CHECK(std::string(choices.causeAgainst(2)) == "wide gap");
}

}  // namespace
}  // namespace tw
