#include "job/brief_keys.h"

#include <doctest/doctest.h>

#include <algorithm>

using namespace tw;

namespace {

/// Page 3 of a small job: a dominant beat and three others.
Job anyJob() {
  Job job;
  job.due = "2027-02-01";
  job.sheet.trimWidth = 170;
  job.sheet.trimHeight = 260;
  job.sheet.bleed = 3;
  job.sheet.live = {10, 10, 10, 10};
  job.cast.push_back({.id = "mara", .name = "MARA", .aliases = {}, .note = ""});
  job.cast.push_back({.id = "odo", .name = "ODO", .aliases = {}, .note = ""});
  Page page;
  page.number = 3;
  for (int i = 1; i <= 4; ++i) {
    Beat beat;
    beat.id = "p3-" + std::to_string(i);
    beat.panel = i;
    beat.figures.push_back({"mara", "stand", "", ""});
    beat.dominant = i == 2;
    page.beats.push_back(beat);
  }
  job.pages.push_back(page);
  return job;
}

Problems problemsOf(const Brief& brief) {
  const Job job = anyJob();
  return contradictionsOf(brief, job.pages[0], job);
}

bool complains(const Brief& brief, const std::string& words) {
  const Problems found = problemsOf(brief);
  return std::any_of(found.begin(), found.end(), [&](const Problem& problem) {
    return describe(problem).find(words) != std::string::npos;
  });
}

std::string refusal(const char* assignment) {
  Brief brief;
  const auto done = setBriefKey(brief, assignment);
  CHECK(brief == Brief{});
  return done ? "accepted" : describe(done.error());
}

}  // namespace

TEST_CASE("every demand can be typed") {
  Brief brief;
  for (const char* assignment :
       {"small-panels=3-5", "dominant=p3-2", "dominant-share=0.4", "focus=mara", "head-mm=8",
        "largest=yes", "whole=yes", "liftable=yes", "bleeds=no", "words=150",
        "direction=right-to-left", "due=2027-01-15", "keep-clear=logo:10,20,30,15.5"}) {
    CAPTURE(assignment);
    CHECK(setBriefKey(brief, assignment));
  }
  CHECK(brief.leastSmallPanels == 3);
  CHECK(brief.mostSmallPanels == 5);
  CHECK(brief.dominantBeat == "p3-2");
  CHECK(brief.leastDominantShare == 0.4);
  CHECK(brief.focus == "mara");
  CHECK(brief.leastHeadMm == 8);
  CHECK(brief.largestInPanel);
  CHECK(brief.wholeFigure);
  CHECK(brief.liftable);
  CHECK_FALSE(brief.bleeds);
  CHECK(brief.mostWords == 150);
  CHECK(brief.direction == ReadingDirection::RightToLeft);
  CHECK(brief.due == "2027-01-15");
  REQUIRE(brief.keepClear.size() == 1);
  CHECK(brief.keepClear[0].name == "logo");
  CHECK(brief.keepClear[0].rect == Rect{{10, 20}, {40, 35.5}});
}

TEST_CASE("what the brief shows can be typed back") {
  Brief brief;
  for (const char* assignment : {"small-panels=4", "dominant-share=40%", "due=2028-02-29",
                                 "keep-clear=credits:0,0,20,10", "head-mm=7.5"})
    REQUIRE(setBriefKey(brief, assignment));
  Brief again;
  for (const BriefEntry& entry : describeBrief(brief))
    REQUIRE_MESSAGE(setBriefKey(again, entry.key + "=" + entry.value), entry.key);
  CHECK(again == brief);
  CHECK(briefTable(brief).find("small-panels    4") != std::string::npos);
}

TEST_CASE("the value none takes a demand back") {
  Brief brief;
  for (const char* key : {"small-panels=3-5", "dominant=p3-2", "focus=mara", "head-mm=8",
                          "due=2027-01-15", "keep-clear=logo:1,2,3,4", "dominant-share=0.5"})
    REQUIRE(setBriefKey(brief, key));
  for (const char* key : {"small-panels=none", "dominant=none", "focus=none", "head-mm=none",
                          "due=none", "keep-clear=none", "dominant-share=none"})
    REQUIRE(setBriefKey(brief, key));
  CHECK(brief == Brief{});
}

TEST_CASE("a keep-clear area of the same name is replaced, another is added") {
  Brief brief;
  for (const char* text :
       {"keep-clear=logo:1,2,3,4", "keep-clear=credits:1,2,3,4", "keep-clear=logo:5,6,7,8"})
    REQUIRE(setBriefKey(brief, text));
  REQUIRE(brief.keepClear.size() == 2);
  CHECK(brief.keepClear[1].rect.min == Point{5, 6});
  REQUIRE(setBriefKey(brief, "keep-clear=credits:none"));
  CHECK(brief.keepClear.size() == 1);
}

TEST_CASE("wrong keys and values are refused with what was expected, and change nothing") {
  CHECK(refusal("smal-panels=3").find("Is \"small-panels\" meant?") != std::string::npos);
  CHECK(refusal("small-panels=5-3").find("such as 3-5") != std::string::npos);
  CHECK(refusal("small-panels=three").find("\"three\" was found") != std::string::npos);
  CHECK(refusal("dominant-share=1.4").find("0 to 1") != std::string::npos);
  CHECK(refusal("head-mm=nan").find("a number from 0") != std::string::npos);
  CHECK(refusal("head-mm=8mm").find("a number from 0") != std::string::npos);
  CHECK(refusal("largest=maybe").find("yes or no") != std::string::npos);
  CHECK(refusal("due=2027-02-29").find("a date such as") != std::string::npos);
  CHECK(refusal("direction=up").find("right-to-left") != std::string::npos);
  CHECK(refusal("keep-clear=logo:1,2,3").find("NAME:x,y,width,height") != std::string::npos);
  CHECK(refusal("keep-clear=logo:1,2,-3,4").find("NAME:x,y") != std::string::npos);
  CHECK(refusal("head-mm").find("KEY=VALUE") != std::string::npos);
  CHECK(refusal("head-mm=").find("no value") != std::string::npos);
  CHECK(refusal("words=99999999999").find("whole number") != std::string::npos);
}

TEST_CASE("a brief that fits its page has no contradictions") {
  Brief brief;
  for (const char* text : {"small-panels=3-5", "dominant=p3-3", "dominant-share=0.4", "focus=mara",
                           "head-mm=8", "liftable=yes", "due=2027-01-15", "keep-clear=a:0,0,9,9"})
    REQUIRE(setBriefKey(brief, text));
  CHECK_MESSAGE(problemsOf(brief).empty(), describe(problemsOf(brief)));
  CHECK(problemsOf(Brief{}).empty());
}

TEST_CASE("contradictions between brief, page and job are named") {
  CHECK(complains({.dominantBeat = "p4-1"}, "no beat p4-1"));
  CHECK(complains({.focus = "nobody"}, "nobody is not in the cast"));
  CHECK(complains({.focus = "odo"}, "odo is in no panel"));
  CHECK(complains({.leastHeadMm = 8}, "of nobody"));
  CHECK(complains({.focus = "mara", .leastHeadMm = 250}, "higher than the live area"));
  CHECK(complains({.leastSmallPanels = 5, .mostSmallPanels = 2}, "5 is more than 2"));
  CHECK(complains({.leastSmallPanels = 5, .mostSmallPanels = 6}, "3 beats beside the dominant"));
  CHECK(complains({.leastDominantShare = 1}, "no area left"));
  CHECK(complains({.keepClear = {{"logo", {{500, 0}, {520, 9}}}}}, "outside the page"));
  CHECK(complains({.keepClear = {{"logo", {{0, 0}, {170, 260}}}}}, "whole live area"));
  CHECK(complains({.due = "soon"}, "not a date"));
  CHECK(complains({.due = "2027-03-01"}, "after the whole job"));
}

TEST_CASE("a share that leaves the others less than their least size says how much is left") {
  Job job = anyJob();
  job.sheet.leastPanelWidth = 25;
  job.sheet.leastPanelHeight = 22;
  const auto found = [&](double share) {
    return describe(contradictionsOf({.leastDominantShare = share}, job.pages[0], job));
  };
  CHECK(found(0.97).find("97 % leaves 13.3 cm² of the page for 3 other panels, which need 16.5 cm²"
                         " at the sheet's least size (25 × 22 mm). At most 96 % can be asked.") !=
        std::string::npos);
  CHECK(found(0.96).empty());
  job.sheet.leastPanelWidth = job.sheet.leastPanelHeight = 0;
  CHECK(found(0.99).empty());
}

TEST_CASE("words over the limit are counted") {
  Job job = anyJob();
  job.pages[0].beats[0].copy.push_back(
      {.id = "p3-1-c1", .speaker = "", .text = "a b c", .words = 3});
  const Problems found = contradictionsOf({.mostWords = 1}, job.pages[0], job);
  REQUIRE(found.size() == 1);
  CHECK(found[0].sentence.find("2 more than the 1 allowed") != std::string::npos);
  CHECK(found[0].place.page == 3);
}

TEST_CASE("demands on a dominant figure need a dominant beat") {
  Job job = anyJob();
  job.pages[0].beats[1].dominant = false;
  const Problems found =
      contradictionsOf({.leastDominantShare = 0.3, .liftable = true}, job.pages[0], job);
  CHECK(found.size() == 2);
}
