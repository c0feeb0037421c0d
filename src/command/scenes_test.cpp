// Corrections of scenes, on the demo's story.
#include <doctest/doctest.h>

#include <algorithm>

#include "command/demo_job.h"
#include "command/looks.h"

namespace tw {
namespace {

std::string refusal(const Result<Job>& done) {
  return done ? "accepted" : describe(done.error());
}

std::string sceneOf(const Job& job, const std::string& beat) {
  for (const Page& page : job.pages)
    for (const Beat& each : page.correctedBeats())
      if (each.id == beat) return each.scene;
  return "";
}

}  // namespace

TEST_CASE("a scene that is opened takes the rest of the one it was in and no more") {
  const DemoJob demo;
  const auto before = changeScenes(demo.folder(), {}, {});
  REQUIRE(before);
  const auto job = changeScenes(demo.folder(), {}, {{"p6-4", "FLASHBACK - TEN YEARS EARLIER"}});
  REQUIRE(job);
  CHECK(sceneOf(*job, "p6-3") == sceneOf(*before, "p6-3"));
  CHECK(sceneOf(*job, "p6-4") != sceneOf(*before, "p6-4"));
  CHECK(sceneOf(*job, "p6-6") == sceneOf(*job, "p6-4"));
  CHECK(sceneOf(*job, "p7-1") == sceneOf(*before, "p7-1"));
  const auto opened = std::ranges::find(job->scenes, sceneOf(*job, "p6-4"), &StoryScene::id);
  REQUIRE(opened != job->scenes.end());
  CHECK(opened->strand == kFlashback);
  CHECK(opened->years == -10);
}

TEST_CASE("scenes in a circle and what is no heading are refused and nothing is kept") {
  const DemoJob demo;
  CHECK(refusal(changeScenes(demo.folder(), {"s5.after=s2", "s2.after=s5"}, {}))
            .find("after itself") != std::string::npos);
  CHECK(refusal(changeScenes(demo.folder(), {"s3.before=s1", "s3.after=s1"}, {}))
            .find("after itself") != std::string::npos);
  CHECK(refusal(changeScenes(demo.folder(), {}, {{"p6-4", "SOMETHING"}})).find("no heading") !=
        std::string::npos);
  const auto job = changeScenes(demo.folder(), {}, {});
  REQUIRE(job);
  CHECK(job->sceneChanges.empty());
}

TEST_CASE("a chain of scenes is no circle and the value guess takes a correction back") {
  const DemoJob demo;
  REQUIRE(changeScenes(demo.folder(), {"s5.after=s2", "s6.after=s5"}, {}));
  const auto job = changeScenes(demo.folder(), {"s5.after=guess", "s6.after=guess"}, {});
  REQUIRE(job);
  CHECK(job->sceneChanges.empty());
}

}  // namespace tw
