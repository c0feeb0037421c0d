#include "job/story_time.h"

#include <doctest/doctest.h>

namespace tw {
namespace {

StoryScene scene(const char* id, const char* time, std::string_view strand = kPresent,
                 double years = 0) {
  StoryScene out;
  out.id = id;
  out.heading = std::string("EXT. ") + id;
  out.time = time;
  out.strand = strand;
  out.years = years;
  return out;
}

/// One page; a beat for each scene, in the order of the names.
Job story(std::vector<StoryScene> scenes) {
  Job job;
  Page page;
  for (const StoryScene& each : scenes) {
    Beat beat;
    beat.id = "b-" + each.id;
    beat.panel = static_cast<int>(page.beats.size()) + 1;
    beat.scene = each.id;
    page.beats.push_back(beat);
  }
  job.pages.push_back(page);
  job.scenes = std::move(scenes);
  return job;
}

std::string order(const StoryTime& time) {
  std::string out;
  for (const Moment& moment : time.moments()) out += moment.beat->scene + " ";
  return out;
}

}  // namespace

TEST_CASE("flashbacks come before the present and the farthest first") {
  const Job job =
      story({scene("now", "day"), scene("vague", "", kFlashback), scene("ten", "", kFlashback, -10),
             scene("then", "day"), scene("ahead", "", kFlashForward)});
  CHECK(order(StoryTime(job)) == "ten vague now then ahead ");
}

TEST_CASE("the artist moves a scene next to another") {
  Job job = story({scene("a", ""), scene("b", ""), scene("c", "")});
  job.sceneChanges["a"].after = "c";
  CHECK(order(StoryTime(job)) == "b c a ");
  job.sceneChanges["c"].before = "nowhere";
  CHECK(order(StoryTime(job)) == "b c a ");
  job.sceneChanges["b"].strand = std::string(kFlashForward);
  CHECK(order(StoryTime(job)) == "c a b ");
}

TEST_CASE("time of day and strands tell how scenes follow each other") {
  const Job job = story({scene("a", "night"), scene("b", ""), scene("c", "night"),
                         scene("d", "continuous"), scene("e", "dawn"), scene("f", "later")});
  const StoryTime time(job);
  CHECK(time.stepInto(0) == SceneStep::Apart);
  CHECK(time.stepInto(1) == SceneStep::SameTime);
  CHECK(time.stepInto(2) == SceneStep::SameTime);
  CHECK(time.stepInto(3) == SceneStep::StraightOn);
  CHECK(time.stepInto(4) == SceneStep::Apart);
  CHECK(time.stepInto(5) == SceneStep::SameTime);
  CHECK(time.stepBetween(0, 3) == SceneStep::SameTime);
  CHECK(time.stepBetween(0, 5) == SceneStep::Apart);
}

TEST_CASE("beats without a known scene still have their moment") {
  Job job = story({scene("a", "day")});
  Beat stray;
  stray.id = "stray";
  stray.scene = "gone";
  job.pages[0].beats.push_back(stray);
  const StoryTime time(job);
  REQUIRE(time.momentOf("stray"));
  CHECK(titleOf(time.sceneOf(*time.momentOf("stray"))) == "no heading");
  CHECK(time.moments().size() == 2);
}

TEST_CASE("a beat that the artist moved is in the scene it was moved to") {
  Job job = story({scene("a", "day"), scene("b", "night")});
  job.pages[0].overrides["b-a"].scene = "b";
  const StoryTime time(job);
  CHECK(time.sceneOf(*time.momentOf("b-a")).id == "b");
  CHECK(time.inWords(*time.momentOf("b-a")) == "page 1 panel 1 (EXT. b)");
}

}  // namespace tw
