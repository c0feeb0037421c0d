// What counts as a break of continuity is common practice, no source.
#include "review/continuity.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <cstdlib>

namespace tw {
namespace {

struct Checker {
  LookWords words;
  Wardrobe wardrobe;
};

const Checker& checker() {
  static const Checker all = [] {
    ::setenv("TIERWRIGHT_PRESETS", TIERWRIGHT_SOURCE_DIR "/presets", 0);
    return Checker{LookWords::load().value(), Wardrobe::load().value()};
  }();
  return all;
}

/// Six panels on two pages: b1 to b4 at night, b5 in the yard the same night, b6 the next dawn.
class Tale {
 public:
  Tale() {
    Character mara;
    mara.id = "mara";
    mara.name = "MARA";
    mara.note = "woman, canvas suit";
    Character tobin = mara;
    tobin.id = "tobin";
    tobin.name = "TOBIN";
    tobin.note = "man, coat";
    job.cast = {mara, tobin};
    job.scenes = {StoryScene{"s1", "INT. TOWER - NIGHT", "", "", "night"},
                  StoryScene{"s2", "EXT. YARD - NIGHT", "", "", "night"},
                  StoryScene{"s3", "EXT. YARD - DAWN", "", "", "dawn"}};
    for (int page = 1; page <= 2; ++page) {
      Page made;
      made.number = page;
      for (int panel = 1; panel <= 3; ++panel) {
        const int n = 3 * (page - 1) + panel;
        Beat beat;
        beat.id = "b" + std::to_string(n);
        beat.panel = panel;
        beat.scene = n < 5 ? "s1" : n == 5 ? "s2" : "s3";
        beat.figures = {{"mara", "stand", "", ""}, {"tobin", "stand", "", ""}};
        made.beats.push_back(beat);
      }
      job.pages.push_back(made);
    }
  }

  Beat& beat(int n) {
    return job.pages[static_cast<std::size_t>(n - 1) / 3]
        .beats[static_cast<std::size_t>(n - 1) % 3];
  }
  void say(LookNote note) { job.cast[0].looks.push_back(std::move(note)); }
  void hold(int n, const std::string& who, const std::string& hand = {}) {
    Prop lantern;
    lantern.id = lantern.name = "lantern";
    lantern.heldBy = who;
    lantern.hand = hand;
    beat(n).props = {lantern};
  }
  std::vector<ContinuityFinding> found() const {
    return continuityOf(job, StoryTime(job), checker().words, checker().wardrobe);
  }

  Job job;
};

}  // namespace

TEST_CASE("a tale in which nothing changes has no findings") {
  CHECK(Tale().found().empty());
}

TEST_CASE("a costume that changes inside a scene names both panels and the scene") {
  Tale tale;
  tale.say({"b3", "", "blanket", false, false, "artist"});
  const auto found = tale.found();
  REQUIRE(found.size() == 1);
  CHECK(found[0].rule == "costume");
  CHECK(found[0].severity == Severity::Must);
  CHECK(found[0].sentence.find("page 1 panel 3 (INT. TOWER - NIGHT)") != std::string::npos);
  CHECK(found[0].sentence.find("page 1 panel 2 (INT. TOWER - NIGHT)") != std::string::npos);
  CHECK_FALSE(found[0].remedy.empty());
}

TEST_CASE("a look that ends before it begins in story time is told as dead") {
  Tale tale;
  tale.say({"b2", "b4", "blanket", false, true, "artist"});
  tale.job.sceneChanges["s1"].after = "s3";
  tale.say({"b2", "b6", "cloak", false, true, "artist"});
  const auto found = tale.found();
  const auto dead = std::ranges::find(found, "statement", &ContinuityFinding::rule);
  REQUIRE(dead != found.end());
  CHECK(dead->sentence.find("never holds") != std::string::npos);
  CHECK(dead->remedy.find("--drop 2") != std::string::npos);
}

TEST_CASE("a costume change that a panel shows is no fault") {
  Tale tale;
  tale.say({"b3", "", "blanket", false, true, "script"});
  CHECK(tale.found().empty());
}

TEST_CASE("a costume that changes with the time of day is no fault and with a cut worth a look") {
  Tale dawn;
  dawn.say({"b6", "", "blanket", false, false, "cast"});
  CHECK(dawn.found().empty());
  Tale cut;
  cut.say({"b5", "", "blanket", false, false, "cast"});
  const auto found = cut.found();
  REQUIRE(found.size() == 1);
  CHECK(found[0].severity == Severity::Look);
}

TEST_CASE("a cut needs a cause and has one when there is a knife in the panel") {
  Tale tale;
  tale.say({"b3", "", "cut on the left cheek", false, false, "cast"});
  const auto found = tale.found();
  REQUIRE(found.size() == 1);
  CHECK(found[0].rule == "mark");
  CHECK(found[0].severity == Severity::Should);
  tale.beat(3).description = "Tobin's knife slips.";
  CHECK(tale.found().empty());
}

TEST_CASE("a cut that is gone the same night is found and one that is gone at dawn is not") {
  Tale tale;
  tale.beat(1).description = "The knife.";
  tale.say({"b2", "b4", "cut on the left cheek", false, false, "cast"});
  const auto found = tale.found();
  REQUIRE(found.size() == 1);
  CHECK(found[0].sentence.find("is gone on page 2 panel 2 (EXT. YARD - NIGHT)") !=
        std::string::npos);
  tale.job.cast[0].looks[0].until = "b5";
  CHECK(tale.found().empty());
}

TEST_CASE("a scar on the other side is wrong and both panels are named") {
  Tale tale;
  tale.job.cast[0].note += ", scar on the left cheek";
  tale.say(
      {"b6", "", "scar on the right cheek, no scar on the left cheek", false, false, "artist"});
  const auto found = tale.found();
  REQUIRE(found.size() == 1);
  CHECK(found[0].rule == "side");
  CHECK(found[0].severity == Severity::Must);
  CHECK(found[0].here.beat == "b6");
  CHECK(found[0].there.beat == "b5");
}

TEST_CASE("a panel that tells of the scar on the other cheek contradicts the cast list") {
  Tale tale;
  tale.job.cast[0].note += ", scar on the left cheek";
  tale.say({"b4", "", "scar on the right cheek", false, false, "script"});
  const auto found = tale.found();
  REQUIRE(found.size() == 1);
  CHECK(found[0].rule == "side");
  CHECK(found[0].here.beat == "b4");
}

TEST_CASE("a second bruise on the other side is no fault when there is a blow") {
  Tale tale;
  tale.job.cast[0].note += ", bruise on the left cheek";
  tale.say({"b4", "", "bruise on the right cheek", false, false, "script"});
  CHECK(tale.found().size() == 1);
  tale.beat(4).description = "TOBIN hits her.";
  CHECK(tale.found().empty());
}

TEST_CASE("a mark on a paired place wants a side") {
  Tale tale;
  tale.job.cast[0].note += ", scar on the cheek";
  const auto found = tale.found();
  REQUIRE(found.size() == 1);
  CHECK(found[0].rule == "side");
}

TEST_CASE("a thing that is held by somebody else wants a hand-over") {
  Tale tale;
  tale.hold(1, "mara");
  tale.hold(3, "tobin");
  const auto found = tale.found();
  REQUIRE(found.size() == 1);
  CHECK(found[0].rule == "holder");
  tale.beat(2).description = "MARA gives TOBIN the lantern.";
  CHECK(tale.found().empty());
}

TEST_CASE("a thing changes hands within a scene only when somebody shifts it") {
  Tale tale;
  tale.hold(1, "mara", "right");
  tale.hold(2, "mara", "left");
  REQUIRE(tale.found().size() == 1);
  CHECK(tale.found()[0].rule == "hand");
  tale.beat(2).description = "She shifts the lantern.";
  CHECK(tale.found().empty());
}

TEST_CASE("a thing that was lost is not in use until it is found again") {
  Tale tale;
  tale.hold(1, "mara");
  tale.beat(2).description = "The lantern sinks past the window.";
  tale.hold(4, "mara");
  auto found = tale.found();
  REQUIRE(found.size() == 1);
  CHECK(found[0].rule == "lost thing");
  CHECK(found[0].severity == Severity::Must);
  CHECK(found[0].there.beat == "b2");
  tale.beat(3).description = "MARA finds the lantern.";
  CHECK(tale.found().empty());
}

TEST_CASE("words that nobody can draw are reported") {
  Tale tale;
  tale.say({"", "", "gizmo on the frobnicator", false, false, "artist"});
  const auto found = tale.found();
  REQUIRE(found.size() == 1);
  CHECK(found[0].rule == "words");
}

TEST_CASE("a staged hand against the stated one is wrong and a hand that flips worth a look") {
  Tale tale;
  tale.hold(1, "mara", "right");
  tale.hold(2, "mara");
  tale.hold(3, "mara");
  const StoryTime story(tale.job);
  const auto found = stagedHandsOf(tale.job, story, checker().words,
                                   {{"b1", "mara", "lantern", "left"},
                                    {"b2", "mara", "lantern", "left"},
                                    {"b3", "mara", "lantern", "right"}});
  REQUIRE(found.size() == 2);
  CHECK(found[0].severity == Severity::Must);
  CHECK(found[1].severity == Severity::Look);
  CHECK(found[1].here.beat == "b3");
}

}  // namespace tw
