#include "command/new_job.h"

#include <doctest/doctest.h>

#include "base/files.h"
#include "base/scratch_folder.h"
#include "command/job_pages.h"
#include "command/page_wishes.h"

namespace tw {

namespace {

const std::string kTower = "PAGE 1\nPanel 1\nMARA climbs the ladder of the old tower.\n";
const std::string kWinch =
    "PAGE 2\nPanel 1\nTOBIN pulls the wet rope by the winch.\nPanel 2\nThe bell swings over the "
    "harbour.\n";

/// A job made from a text, which revised texts can be read into.
class StoryJob {
 public:
  explicit StoryJob(const std::string& text) {
    NewJobRequest request;
    request.folder = folder_;
    request.script = scriptWith(text);
    REQUIRE(newJob(request));
  }
  std::filesystem::path scriptWith(const std::string& text) {
    const auto file = scratch_ / ("draft-" + std::to_string(++drafts_) + ".txt");
    REQUIRE(writeFileAtomically(file, text));
    return file;
  }
  Imported revise(const std::string& text) {
    auto revised = reviseJob(folder_, scriptWith(text));
    REQUIRE_MESSAGE(revised, (revised ? std::string() : describe(revised.error())));
    return *revised;
  }
  Job loaded() const { return openJob(folder_)->job; }
  const std::filesystem::path& folder() const { return folder_; }

 private:
  ScratchFolder scratch_;
  std::filesystem::path folder_ = scratch_ / "job";
  int drafts_ = 0;
};

}  // namespace

TEST_CASE("a page pushed back by a new page keeps its brief and its corrections") {
  StoryJob story(kTower + kWinch);
  REQUIRE(changeBrief(story.folder(), 2, {"dominant=p2-2", "small-panels=1-3"}));
  REQUIRE(changeBeats(story.folder(), {"p2-1.shot=close-up"}));
  std::string pushed = kWinch;
  pushed.replace(pushed.find("PAGE 2"), 6, "PAGE 3");
  story.revise(kTower + "PAGE 2\nPanel 1\nA gull asleep on a barrel.\n" + pushed);
  const Job job = story.loaded();
  CHECK(job.page(3)->brief.dominantBeat == "p2-2");
  CHECK(job.page(3)->correctedBeats()[0].shot == ShotSize::CloseUp);
  CHECK(job.page(2)->brief == Brief{});
  CHECK(job.page(2)->overrides.empty());
}

TEST_CASE("a correction goes with its panel onto another page") {
  StoryJob story(kTower + kWinch);
  REQUIRE(changeBeats(story.folder(), {"p2-2.weight=3"}));
  const Imported revised = story.revise(kTower + "Panel 2\nThe bell swings over the harbour.\n" +
                                        kWinch.substr(0, kWinch.find("Panel 2")));
  const Job job = story.loaded();
  REQUIRE(job.page(1)->beats.size() == 2);
  CHECK(job.page(1)->correctedBeats()[1].weight == 3);
  CHECK(job.page(2)->overrides.empty());
  CHECK_FALSE(revised.changes.empty());
}

TEST_CASE("an answered finding goes with its panel, one on the page stays with the page") {
  StoryJob story(kTower + kWinch);
  {
    auto folder = JobFolder::open(story.folder());
    REQUIRE(folder);
    Page page = *story.loaded().page(2);
    page.silenced = {{"leaks off", "p2-2", "the bell is meant to swing out"},
                     {"rhythm", "", "quiet on purpose"}};
    REQUIRE(folder->savePage(page));
  }
  story.revise(kTower + "Panel 2\nThe bell swings over the harbour.\n" +
               kWinch.substr(0, kWinch.find("Panel 2")));
  const Job job = story.loaded();
  REQUIRE(job.page(1)->silenced.size() == 1);
  CHECK(job.page(1)->silenced[0].beat == "p2-2");
  REQUIRE(job.page(2)->silenced.size() == 1);
  CHECK(job.page(2)->silenced[0].rule == "rhythm");
}

TEST_CASE("of several settings all are made or none") {
  StoryJob story(kTower + kWinch);
  const Job before = story.loaded();
  const auto brief = changeBrief(story.folder(), 2, {"dominant=p2-2", "small-panels=many", "x=1"});
  REQUIRE_FALSE(brief);
  CHECK(brief.error().size() == 2);
  CHECK_FALSE(changeBeats(story.folder(), {"p2-1.shot=close-up", "p9-9.shot=wide"}));
  CHECK(story.loaded() == before);
}

TEST_CASE("a job open elsewhere is shown but not changed") {
  StoryJob story(kTower + kWinch);
  const auto other = openJob(story.folder());
  REQUIRE(other);
  CHECK(changeBrief(story.folder(), 1, {}));
  CHECK_FALSE(changeBrief(story.folder(), 1, {"small-panels=2"}));
  CHECK_FALSE(changeBeats(story.folder(), {"p2-1.shot=close-up"}));
  CHECK_FALSE(reviseJob(story.folder(), story.scriptWith(kTower)));
}

TEST_CASE("a spread is found by either of its numbers, and a page nobody has is told") {
  Job job;
  job.pages.resize(2);
  job.pages[0].number = 1;
  job.pages[1].number = 2;
  job.pages[1].spread = true;
  CHECK(pagesAsked(job, 3).value() == std::vector<int>{2});
  CHECK(pagesAsked(job, std::nullopt).value() == std::vector<int>{1, 2});
  const auto none = pagesAsked(job, 4);
  REQUIRE_FALSE(none);
  CHECK(none.error()[0].advice == "Its pages are 1, 2.");
  CHECK_FALSE(pagesAsked(Job{}, std::nullopt));
}

}  // namespace tw
