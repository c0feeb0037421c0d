#include "command/silence.h"

#include <doctest/doctest.h>

#include <algorithm>

#include "command/demo_job.h"
#include "command/job_pages.h"
#include "command/story.h"

namespace tw {

TEST_CASE("an answer is kept in the page's file") {
  const DemoJob job;
  REQUIRE(silenceFinding({job.folder(), 4, "tangents", 2, "the rope is meant to touch", false}));
  const auto open = openJob(job.folder());
  REQUIRE(open);
  const Page& page = *open->job.page(4);
  REQUIRE(page.silenced.size() == 1);
  CHECK(page.silenced[0].beat == page.beats[1].id);
  CHECK(page.silenced[0].reason == "the rope is meant to touch");
}

TEST_CASE("an answer to what is not found there is kept, and told with where the rule stands") {
  const DemoJob job;
  const auto story = storyTold(job.folder());
  REQUIRE(story);
  const auto found = std::ranges::find_if(
      story->findings, [](const Finding& f) { return f.panel > 0 && f.rule != "not measured"; });
  REQUIRE(found != story->findings.end());
  const auto there =
      silenceFinding({job.folder(), found->page, found->rule, found->panel, "meant", false});
  REQUIRE(there);
  CHECK(there->isFoundNow);
  const auto beside = silenceFinding({job.folder(), found->page, found->rule, 0, "meant", false});
  REQUIRE(beside);
  CHECK_FALSE(beside->isFoundNow);
  CHECK_FALSE(beside->standsAt.empty());
}

TEST_CASE("an unknown rule, a panel that is not there and no reason are told, nothing is kept") {
  const DemoJob job;
  const auto rule = silenceFinding({job.folder(), 4, "swagger", 2, "why not", false});
  REQUIRE_FALSE(rule);
  CHECK(describe(rule.error()).find("tangents") != std::string::npos);  // says which there are
  CHECK_FALSE(silenceFinding({job.folder(), 4, "tangents", 40, "why not", false}));
  CHECK_FALSE(silenceFinding({job.folder(), 4, "tangents", 2, "", false}));
  CHECK_FALSE(silenceFinding({job.folder(), 400, "tangents", 2, "why not", false}));
  CHECK_FALSE(silenceFinding({job.folder(), 4, "tangents", 2, "", true}));
  CHECK(openJob(job.folder())->job.page(4)->silenced.empty());
}

}  // namespace tw
