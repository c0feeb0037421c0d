#include "job/look_words.h"

#include <doctest/doctest.h>

#include <cstdlib>

#include "job/look_at.h"

namespace tw {
namespace {

const LookWords& words() {
  static const LookWords all = [] {
    ::setenv("TIERWRIGHT_PRESETS", TIERWRIGHT_SOURCE_DIR "/presets", 0);
    return LookWords::load().value();
  }();
  return all;
}

LookItem only(const char* text) {
  const auto items = words().itemsIn(text);
  REQUIRE(items.size() == 1);
  return items.front();
}

/// Five beats in one scene, or in two strands when `past` names those of a flashback.
Job fiveBeats(std::initializer_list<int> past = {}) {
  Job job;
  Page page;
  job.scenes = {StoryScene{"now", "EXT. NOW", "", "", "", std::string(kPresent), 0, 1},
                StoryScene{"past", "EXT. PAST", "", "", "", std::string(kFlashback), -10, 2}};
  for (int i = 1; i <= 5; ++i) {
    Beat beat;
    beat.id = "b" + std::to_string(i);
    beat.panel = i;
    beat.scene = "now";
    for (const int p : past)
      if (p == i) beat.scene = "past";
    page.beats.push_back(beat);
  }
  job.pages.push_back(page);
  return job;
}

LookHeld heldAt(const Job& job, const Character& who, const char* beat) {
  const StoryTime story(job);
  return lookAt(who, story, story.momentOf(beat).value(), words());
}

}  // namespace

TEST_CASE("marks know kind and place and the character's own side") {
  const LookItem cut = only("a fresh cut on the left cheek");
  CHECK(cut.kind == LookItem::Kind::Mark);
  CHECK(cut.mark == "cut");
  CHECK(cut.place == "cheek");
  CHECK(cut.side == "left");
  CHECK_FALSE(cut.lasting);
  CHECK(only("old scar over the right eyebrow").lasting);
  CHECK(only("torn sleeve on the right").mark == "tear");
  CHECK(only("bandaged right forearm").place == "forearm");
  CHECK(only("eye patch, ").place == "eye");
}

TEST_CASE("a place behind a mark carries the mark on") {
  const auto items = words().itemsIn("bruises on the left cheek and chin, long coat");
  REQUIRE(items.size() == 3);
  CHECK(items[1].mark == "bruise");
  CHECK(items[1].place == "chin");
  CHECK(items[2].kind == LookItem::Kind::Costume);
}

TEST_CASE("hands are said of things and of people") {
  const LookItem held = only("the lantern in her left hand");
  CHECK(held.kind == LookItem::Kind::Held);
  CHECK(held.thing == "lantern");
  CHECK(held.side == "left");
  CHECK(only("left-handed").kind == LookItem::Kind::WorkingHand);
  CHECK(only("rope in both hands").side == "both");
}

TEST_CASE("words that take off take off") {
  CHECK(only("no bandage").off);
  CHECK(only("no bandage").mark == "bandage");
  CHECK(only("helmet off").off);
  CHECK(only("without the coat").words == "the coat");
}

TEST_CASE("garments that sound like marks stay garments") {
  for (const char* text : {"well cut suit", "torn coat", "patched canvas suit", "scarf"}) {
    CAPTURE(text);
    CHECK(only(text).kind == LookItem::Kind::Costume);
  }
}

TEST_CASE("a statement holds from its beat to its last") {
  Character who;
  who.id = "mara";
  who.looks = {{"b2", "b3", "helmet", false, false, "artist"}};
  const Job job = fiveBeats();
  CHECK(heldAt(job, who, "b1").dressings.empty());
  CHECK(heldAt(job, who, "b2").dressings.size() == 1);
  CHECK(heldAt(job, who, "b3").dressings.size() == 1);
  CHECK(heldAt(job, who, "b4").dressings.empty());
}

TEST_CASE("from the past only what lasts is there in the present") {
  Character who;
  who.id = "mara";
  who.looks = {{"b3", "", "dress, cut on the left cheek, scar on the chin", false, false, "cast"}};
  const Job job = fiveBeats({3, 4});
  CHECK(heldAt(job, who, "b4").marks.size() == 2);
  const LookHeld now = heldAt(job, who, "b1");  // the present, after the flashback in story time
  CHECK(now.dressings.empty());
  REQUIRE(now.marks.size() == 1);
  CHECK(now.marks[0].kind == "scar");
}

TEST_CASE("a mark said anew on the other side is a second mark and off takes both") {
  Character who;
  who.note = "cut on the left cheek";
  who.looks = {{"b2", "", "cut on the right cheek", false, false, "artist"},
               {"b4", "", "no cut", false, false, "artist"}};
  const Job job = fiveBeats();
  CHECK(heldAt(job, who, "b2").marks.size() == 2);
  CHECK(heldAt(job, who, "b4").marks.empty());
}

TEST_CASE("things in hand are in the hand that is said") {
  Job job = fiveBeats();
  Character who;
  who.id = "mara";
  who.hand = "right";
  who.looks = {{"b3", "b3", "lantern in the left hand", false, false, "artist"}};
  job.cast = {who};
  for (Beat& beat : job.pages[0].beats) {
    Prop lantern;
    lantern.id = lantern.name = "lantern";
    lantern.heldBy = "mara";
    lantern.sizeM = {0.2, 0.3, 0.2};
    beat.props = {lantern};
  }
  sayHands(job, words());
  CHECK(job.pages[0].beats[1].props[0].hand == "right");
  CHECK(job.pages[0].beats[2].props[0].hand == "left");
  Beat& fifth = job.pages[0].beats[4];
  fifth.figures = {{"mara", "pull", "pulls", "lantern"}};
  fifth.props[0].hand.clear();
  sayHands(job, words());
  CHECK(fifth.props[0].hand.empty());
}

TEST_CASE("a broken file of marks is refused with every problem") {
  const auto read = LookWords::read(R"({"marks": 3, "places": [{"name": "x"}], "off": [1]})", "m");
  REQUIRE_FALSE(read);
  CHECK(read.error().size() >= 3);
  CHECK_FALSE(LookWords::read("not json", "m"));
}

}  // namespace tw
