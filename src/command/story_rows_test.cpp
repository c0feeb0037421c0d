#include <doctest/doctest.h>

#include "command/demo_job.h"
#include "command/story.h"

namespace tw {

TEST_CASE("each page has a line and one without a rough is told as not measured") {
  DemoJob job;
  job.roughs(1);
  const auto told = storyTold(job.folder());
  REQUIRE(told);
  const auto rows = storyRows(*told);
  REQUIRE(rows.size() == told->story.pages.size() + 1);
  for (std::size_t i = 1; i < rows.size(); ++i) {
    REQUIRE(rows[i].size() == rows[0].size());
    const bool measured = told->story.pages[i - 1].measured;
    CHECK(measured == (told->story.pages[i - 1].number == 4));
    CHECK((rows[i][1] == "none") == !measured);
    CHECK((rows[i].back() == "not measured") == !measured);
  }
}

}  // namespace tw
