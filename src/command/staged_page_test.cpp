#include "command/staged_page.h"

#include <doctest/doctest.h>

#include "command/demo_job.h"

namespace tw {

TEST_CASE("without a name the chosen rough is opened, else the first") {
  DemoJob job;
  job.roughs(2);
  {
    const auto first = openStagedPage(job.folder(), 4, "");
    REQUIRE(first);
    CHECK((*first)->measured->rough().name == "A");
    (*first)->stored().choice = "B";
    REQUIRE((*first)->folder->savePage((*first)->stored()));
  }
  const auto chosen = openStagedPage(job.folder(), 4, "");
  REQUIRE(chosen);
  CHECK((*chosen)->measured->rough().name == "B");
}

TEST_CASE("a page without roughs says so") {
  const DemoJob job;
  const auto none = openStagedPage(job.folder(), 4, "");
  REQUIRE_FALSE(none);
  CHECK(none.error().front().cause == Cause::BadInput);
}

}  // namespace tw
