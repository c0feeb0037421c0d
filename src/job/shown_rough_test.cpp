#include "job/shown_rough.h"

#include <doctest/doctest.h>

namespace tw {

TEST_CASE("the chosen rough stands for its page and else the best ranked") {
  Page page;
  CHECK(shownRough(page) == nullptr);
  page.roughs.resize(2);
  page.roughs[0].name = "A";
  page.roughs[1].name = "B";
  CHECK(shownRough(page)->name == "A");
  page.choice = "B";
  CHECK(shownRough(page)->name == "B");
  page.choice = "F";
  CHECK(shownRough(page)->name == "A");
}

}  // namespace tw
