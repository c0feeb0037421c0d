#include "command/mix.h"

#include <doctest/doctest.h>

#include "command/demo_job.h"
#include "command/job_pages.h"

namespace tw {

TEST_CASE("a mixed rough stands beside the two under the next free name and they stay") {
  DemoJob job;
  const auto before = job.roughs(2).composed.roughs;
  const auto made = mixRoughs({job.folder(), 4, 3, "B", "A"});
  REQUIRE(made);
  CHECK(made->rough.name == "C");
  CHECK(made->scoreInto == doctest::Approx(before[0].score));
  CHECK(made->scoreFrom == doctest::Approx(before[1].score));
  const auto open = openJob(job.folder());
  REQUIRE(open);
  const Page& page = *open->job.page(4);
  REQUIRE(page.roughs.size() == 3);
  CHECK(page.roughs[0].panels[2].staging.choice == before[0].panels[2].staging.choice);
  const Rough& mixed = page.roughs[2];
  CHECK(mixed.panels[2].staging.choice == before[1].panels[2].staging.choice);
  CHECK(mixed.arrangement == before[0].arrangement);
  CHECK(mixed.panels[0].staging == page.roughs[0].panels[0].staging);
  double sum = 0;
  for (const CardLine& line : mixed.card) sum += line.cost;
  CHECK(mixed.score == doctest::Approx(sum).epsilon(0.001));
}

TEST_CASE("without a panel the arrangement of one takes the stagings of the other") {
  DemoJob job;
  const auto before = job.roughs(2).composed.roughs;
  const auto made = mixRoughs({job.folder(), 4, std::nullopt, "B", "A"});
  REQUIRE(made);
  CHECK(made->rough.arrangement == before[1].arrangement);
  CHECK(made->rough.treatment == before[1].treatment);
  for (std::size_t i = 0; i < before[0].panels.size(); ++i)
    CHECK(made->rough.panels[i].staging.choice == before[0].panels[i].staging.choice);
}

TEST_CASE("a rough is not mixed with itself nor with one that is not there") {
  DemoJob job;
  job.roughs(1);
  CHECK_FALSE(mixRoughs({job.folder(), 4, 1, "A", "A"}));
  CHECK_FALSE(mixRoughs({job.folder(), 4, 1, "B", "A"}));
  CHECK_FALSE(mixRoughs({job.folder(), 4, 77, "A", "B"}));
}

}  // namespace tw
