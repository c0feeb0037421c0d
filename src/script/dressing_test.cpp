#include "script/dressing.h"

#include <algorithm>

#include "script/script_fixture.h"

namespace tw {
namespace {

constexpr const char* kHead = "CAST\nMARA - woman, canvas suit\nTOBIN - man\n\n";

std::vector<LookNote> looksOf(const Script& script, const std::string& who) {
  const auto found = std::ranges::find(script.cast, who, &Character::id);
  REQUIRE(found != script.cast.end());
  return found->looks;
}

}  // namespace

TEST_CASE("what a panel shows worn holds from it until the time of day changes") {
  const Script script =
      readText(std::string(kHead) +
               "PAGE 1\nPanel 1\nEXT. BOAT - DUSK\nMARA sits wrapped in a blanket.\n\n"
               "Panel 2\nTOBIN looks at her.\n\nPanel 3\nEXT. BOAT - NIGHT\nRain.\n");
  const auto looks = looksOf(script, "mara");
  REQUIRE(looks.size() == 1);
  CHECK(looks[0].words == "blanket");
  CHECK(looks[0].from == "p1-1");
  CHECK(looks[0].until == "p1-2");
  CHECK_FALSE(looks[0].told);
  for (const Prop& prop : script.pages[0].beats[0].props) CHECK(prop.name != "blanket");
}

TEST_CASE("what is put on is worn from the next panel on and is told") {
  const Script script = readText(
      std::string(kHead) + "PAGE 1\nPanel 1\nMARA puts on the helmet.\n\nPanel 2\nMARA waves.\n");
  const auto looks = looksOf(script, "mara");
  REQUIRE(looks.size() == 1);
  CHECK(looks[0].words == "helmet");
  CHECK(looks[0].from == "p1-2");
  CHECK(looks[0].told);
}

TEST_CASE("what is put on before a flashback is worn after it") {
  const Script script = readText(std::string(kHead) +
                                 "PAGE 1\nPanel 1\nEXT. BOAT - DAY\nMARA puts on the helmet.\n\n"
                                 "Panel 2\nEXT. VALLEY - DAY (FLASHBACK)\nMARA runs.\n\n"
                                 "Panel 3\nEXT. BOAT - DAY\nMARA waves.\n");
  const auto looks = looksOf(script, "mara");
  REQUIRE(looks.size() == 1);
  CHECK(looks[0].from == "p1-3");
}

TEST_CASE("now in a coat takes the place of the costume before") {
  const Script script = readText(
      std::string(kHead) + "PAGE 1\nPanel 1\nTOBIN and MARA, now in her civilian coat, walk.\n");
  const auto looks = looksOf(script, "mara");
  REQUIRE(looks.size() == 1);
  CHECK(looks[0].words == "civilian coat");
  CHECK(looks[0].instead);
  CHECK(looksOf(script, "tobin").empty());
}

TEST_CASE("a mark with side and place is the mark of who is named last") {
  const Script script =
      readText(std::string(kHead) + "PAGE 1\nPanel 1\nMARA turns, a cut on her left cheek.\n");
  const auto looks = looksOf(script, "mara");
  REQUIRE(looks.size() == 1);
  CHECK(looks[0].words == "cut on the left cheek");
}

TEST_CASE("what is done to a body is no mark") {
  const Script script =
      readText(std::string(kHead) + "PAGE 1\nPanel 1\nMARA cuts the rope. TOBIN rubs his head.\n");
  CHECK(looksOf(script, "mara").empty());
  CHECK(looksOf(script, "tobin").empty());
}

TEST_CASE("dated parts of the cast list hold for their pages and leave the note") {
  const Script script = readText(
      "CAST\nMARA - woman, canvas suit; from page 2 to page 3: helmet; page 3 panel 2: wrapped in "
      "a blanket, cut on the left cheek; from page 3: scar on the right cheek\n\n"
      "PAGE 1\nPanel 1\nMARA.\n\nPAGES 2-3 (SPREAD)\nPanel 1\nMARA.\n\nPanel 2\nMARA.\n\n"
      "PAGE 4\nPanel 1\nMARA.\n");
  const auto who = std::ranges::find(script.cast, "mara", &Character::id);
  CHECK(who->note == "woman, canvas suit");
  REQUIRE(who->looks.size() == 3);
  CHECK(who->looks[0].from == "p2-1");
  CHECK(who->looks[0].until == "p2-2");
  CHECK(who->looks[1].from == "p2-2");
  CHECK(who->looks[1].until == "p2-2");
  CHECK(who->looks[2].from == "p2-1");
  CHECK(who->looks[2].until.empty());
  CHECK(who->looks[2].source == "cast");
}

TEST_CASE("a note without dates is left as it is") {
  std::string note = "old man, coat; keeps to page and pen. Walks with a stick";
  CHECK(takeDatedLooks(note).empty());
  CHECK(note == "old man, coat; keeps to page and pen. Walks with a stick");
}

}  // namespace tw
