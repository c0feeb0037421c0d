// Headings as script writers write them: common practice, no source.
#include <algorithm>

#include "script/scene_headings.h"
#include "script/script_fixture.h"

namespace tw {
namespace {

const StoryScene& sceneOf(const Script& script, std::size_t page, std::size_t panel) {
  const std::string& id = script.pages.at(page).beats.at(panel).scene;
  const auto found = std::ranges::find(script.scenes, id, &StoryScene::id);
  REQUIRE(found != script.scenes.end());
  return *found;
}

}  // namespace

TEST_CASE("a slug gives side and place and time of day") {
  struct Case {
    const char *line, *side, *place, *time;
  };
  for (const Case& c : {Case{"INT. BELL TOWER - NIGHT", "interior", "bell tower", "night"},
                        {"EXT. FLOODED VALLEY \u2014 DAWN", "exterior", "flooded valley", "dawn"},
                        {"INT./EXT. CAR - DAY", "both", "car", "day"},
                        {"I/E. CAR - CONTINUOUS", "both", "car", "continuous"},
                        {"INT. SHIP - CABIN - LATER", "interior", "ship, cabin", "later"},
                        {"EXT. STREET", "exterior", "street", ""},
                        {"Int. Kitchen. Mara cooks.", "interior", "kitchen", ""}}) {
    CAPTURE(c.line);
    const auto heading = sceneHeadingFrom(c.line);
    REQUIRE(heading);
    CHECK(heading->side == c.side);
    CHECK(heading->place == c.place);
    CHECK(heading->time == c.time);
    CHECK(heading->shift == StoryShift::None);
  }
}

TEST_CASE("words of story time move the story by what they say") {
  struct Case {
    const char* line;
    StoryShift shift;
    double years;
  };
  for (const Case& c : {Case{"FLASHBACK", StoryShift::IntoPast, 0},
                        {"FLASHBACK - TEN YEARS EARLIER", StoryShift::IntoPast, 10},
                        {"BEGIN FLASHBACK:", StoryShift::IntoPast, 0},
                        {"TWENTY-TWO YEARS EARLIER", StoryShift::IntoPast, 22},
                        {"6 MONTHS AGO", StoryShift::IntoPast, 0.5},
                        {"THE NIGHT BEFORE", StoryShift::IntoPast, 1 / 365.25},
                        {"THREE DAYS LATER", StoryShift::Onward, 3 / 365.25},
                        {"THE NEXT MORNING", StoryShift::Onward, 1 / 365.25},
                        {"END FLASHBACK", StoryShift::ToPresent, 0},
                        {"BACK TO THE PRESENT", StoryShift::ToPresent, 0},
                        {"PRESENT DAY", StoryShift::ToPresent, 0},
                        {"FLASH FORWARD", StoryShift::IntoFuture, 0}}) {
    CAPTURE(c.line);
    const auto heading = sceneHeadingFrom(c.line);
    REQUIRE(heading);
    CHECK(heading->shift == c.shift);
    CHECK(heading->years == doctest::Approx(c.years));
  }
}

TEST_CASE("other lines in capitals open no scene") {
  for (const char* line : {"MARA", "THE DOOR OPENS", "NIGHT", "TEN", "YEARS", "A BELL RINGS LATER",
                           "EXTRA! EXTRA!", "INTO THE DARK", "FLASHBACKS ARE CHEAP"}) {
    CAPTURE(line);
    CHECK_FALSE(sceneHeadingFrom(line));
  }
}

TEST_CASE("a scene goes on over panels and pages until the next heading") {
  const Script script = readText(
      "PAGE 1\nPanel 1\nINT. BELL TOWER - NIGHT\nA bell.\n\nPanel 2\nThe rope.\n\n"
      "PAGE 2\nPanel 1\nA rat.\n\nPanel 2\nEXT. YARD - DAWN\nA dog.\n");
  REQUIRE(script.scenes.size() == 2);
  CHECK(script.scenes[0].heading == "INT. BELL TOWER - NIGHT");
  CHECK(script.scenes[0].line == 3);
  CHECK(sceneOf(script, 1, 0).id == "s1");
  CHECK(sceneOf(script, 1, 1).place == "yard");
}

TEST_CASE("a heading said again word for word goes on with its scene") {
  const Script script = readText(
      "PAGE 1\nPanel 1\nINT. CELL - NIGHT\nA bed.\n\nPAGE 2\nPanel 1\nINT. CELL - NIGHT\nA rat.\n");
  CHECK(script.scenes.size() == 1);
}

TEST_CASE("a flashback lasts until the way back is said") {
  const Script script = readText(
      "PAGE 1\nPanel 1\nEXT. LAKE - DAY\nA boat.\n\nFLASHBACK - TEN YEARS EARLIER\n\n"
      "Panel 2\nEXT. VALLEY - DAY\nA village.\n\nPanel 3\nINT. CHAPEL\nA bell.\n\n"
      "BACK TO PRESENT\n\nPanel 4\nThe boat.\n");
  CHECK(sceneOf(script, 0, 0).strand == kPresent);
  CHECK(sceneOf(script, 0, 1).strand == kFlashback);
  CHECK(sceneOf(script, 0, 1).years == -10);
  CHECK(sceneOf(script, 0, 2).strand == kFlashback);
  CHECK(sceneOf(script, 0, 3).strand == kPresent);
  CHECK(sceneOf(script, 0, 3).place == "lake");
}

TEST_CASE("a flashback in a slug is over with its scene") {
  const Script script = readText(
      "PAGE 1\nPanel 1\nEXT. VALLEY - DAY (FLASHBACK)\nA village.\n\n"
      "Panel 2\nEXT. LAKE - DAY\nA boat.\n");
  CHECK(sceneOf(script, 0, 0).strand == kFlashback);
  CHECK(sceneOf(script, 0, 1).strand == kPresent);
}

TEST_CASE("a caption that is nothing but story time opens a scene and stays copy") {
  const Script script =
      readText("PAGE 1\nPanel 1\nA boat.\n\nPanel 2\nA village.\n\nCAPTION: Ten years earlier.\n");
  REQUIRE(script.scenes.size() == 2);
  CHECK(sceneOf(script, 0, 1).years == -10);
  CHECK(script.pages[0].beats[1].copy.size() == 1);
}

TEST_CASE("a heading behind the last panel is reported") {
  const Script script = readText("PAGE 1\nPanel 1\nA boat.\n\nCAPTION: Gone.\n\nEXT. YARD - DAY\n");
  CHECK(warns(script, 8, "behind the last panel"));
}

TEST_CASE("a revised script keeps the ids of scenes that keep their beats") {
  const Script first = readText(
      "PAGE 1\nPanel 1\nEXT. LAKE - DAY\nA boat on the grey water.\n\n"
      "Panel 2\nINT. CHAPEL - NIGHT\nA bell hangs in the dark.\n");
  Script second = readText(
      "PAGE 1\nPanel 1\nEXT. ROAD - DAY\nA cart comes down the hill.\n\n"
      "Panel 2\nEXT. LAKE - DAY\nA boat on the grey water.\n\n"
      "Panel 3\nINT. CHAPEL - NIGHT\nA bell hangs in the dark.\n");
  carryOver(first.pages, second.pages);
  carryScenesOver(first.scenes, first.pages, second.scenes, second.pages);
  CHECK(second.scenes[1].id == "s1");
  CHECK(second.scenes[2].id == "s2");
  CHECK(second.scenes[0].id == "s3");
  CHECK(second.pages[0].beats[2].scene == "s2");
}

}  // namespace tw
