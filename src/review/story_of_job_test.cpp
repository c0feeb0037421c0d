#include "review/story_of_job.h"

#include <doctest/doctest.h>
#include <rapidcheck.h>

#include <algorithm>

#include "read/full_figure.h"
#include "read/size_runs.h"
#include "read/tempo.h"
#include "review/example_story.h"

namespace tw {

using namespace example;

TEST_CASE("a page with a rough is measured from it") {
  const Job told = job({page(1, {panel().figure("ada", 12, 40, true).shot(ShotSize::Long),
                                 panel("Suddenly ben.").figure("ben", 30).says("ben", 7)})});
  const SeenStory story = storyOf(told);
  REQUIRE(story.pages.size() == 1);
  CHECK(story.pages[0].measured);
  const StoryPanel &first = story.pages[0].panels[0], &second = story.pages[0].panels[1];
  CHECK(first.shot == ShotSize::Long);
  CHECK(first.headMm == 12);
  CHECK(first.wholeShown == 1);
  CHECK(first.areaShare == doctest::Approx(0.5));
  CHECK(first.figureShare == doctest::Approx(0.3));
  CHECK(second.words == 7);
  CHECK(second.revealWord == "suddenly");
  CHECK(second.enters == std::vector<std::string>{"ben"});
  CHECK(second.wholeShown == 0);
  CHECK(second.seconds > first.seconds);
}

TEST_CASE("a page without a rough or with one of another draft is not measured") {
  Job told = job({page(1, {panel(), panel()})});
  told.pages[0].roughs[0].panels[1].beat = "p9-9";
  CHECK_FALSE(storyOf(told).pages[0].measured);
  told.pages[0].roughs.clear();
  const SeenStory story = storyOf(told);
  CHECK_FALSE(story.pages[0].measured);
  CHECK(story.pages[0].panels.size() == 2);
}

TEST_CASE("the chosen rough is the one that is measured") {
  Job told = job({page(1, {panel().shot(ShotSize::Long)})});
  Rough other = told.pages[0].roughs[0];
  other.name = "B";
  other.panels[0].staging.choice.shot = ShotSize::CloseUp;
  told.pages[0].roughs.push_back(other);
  told.pages[0].choice = "B";
  CHECK(storyOf(told).pages[0].rough == "B");
  CHECK(storyOf(told).pages[0].panels[0].shot == ShotSize::CloseUp);
}

TEST_CASE("speakers stand in order when the first to speak is on the side read first") {
  Job told = job({page(
      1, {panel().figure("ada", 10, 120).figure("ben", 10, 40).says("ada", 3).says("ben", 3)})});
  CHECK(storyOf(told).pages[0].panels[0].speakersInOrder == 0);
  told.pages[0].brief.direction = ReadingDirection::RightToLeft;
  CHECK(storyOf(told).pages[0].panels[0].speakersInOrder == 1);
}

namespace {

Page anyPage(int number) {
  std::vector<Told> panels;
  const int count = *rc::gen::inRange(1, 6);
  for (int i = 0; i < count; ++i) {
    const auto head = static_cast<double>(*rc::gen::inRange(5, 30));
    panels.push_back(panel()
                         .figure("ada", head, 40, *rc::gen::arbitrary<bool>())
                         .says("ada", *rc::gen::inRange(0, 40))
                         .shot(static_cast<ShotSize>(*rc::gen::inRange(0, kShotSizes))));
  }
  return page(number, panels);
}

}  // namespace

TEST_CASE("a story told backward has the same measures page by page") {
  CHECK(rc::check("reversed", [] {
    std::vector<Page> pages;
    const int count = *rc::gen::inRange(1, 7);
    for (int n = 1; n <= count; ++n) pages.push_back(anyPage(n));
    std::vector<Page> back(pages.rbegin(), pages.rend());
    const SeenStory forth = storyOf(job(pages)), reversed = storyOf(job(back));
    for (std::size_t p = 0; p < pages.size(); ++p) {
      const StoryPage &a = forth.pages[p], &b = reversed.pages[pages.size() - 1 - p];
      const PageTempo ta = pageTempoOf(a), tb = pageTempoOf(b);
      RC_ASSERT(ta.seconds == tb.seconds && ta.words == tb.words);
      RC_ASSERT(ta.meanAreaShare == tb.meanAreaShare && ta.wordless == tb.wordless);
      RC_ASSERT(fullFigureOn(a).shown == fullFigureOn(b).shown);
    }
  }));
}

TEST_CASE("words added to any panel never shorten its page") {
  CHECK(rc::check("words", [] {
    Page before = anyPage(1);
    Page after = before;
    const auto at = *rc::gen::inRange<std::size_t>(0, before.beats.size());
    after.beats[at] = panel().says("ada", 1 + *rc::gen::inRange(0, 20)).beat;
    after.beats[at].id = before.beats[at].id;
    for (const CopyItem& item : before.beats[at].copy) after.beats[at].copy.push_back(item);
    const double was = pageTempoOf(storyOf(job({before})).pages[0]).seconds;
    RC_ASSERT(pageTempoOf(storyOf(job({after})).pages[0]).seconds > was);
  }));
}

}  // namespace tw
