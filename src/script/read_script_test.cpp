// The shapes in which scripts come. Shapes are common practice, no source.
#include "script/script_fixture.h"

using namespace tw;

namespace {

const ScriptPage& onlyPage(const Script& script) {
  REQUIRE(script.pages.size() == 1);
  return script.pages.front();
}

ScriptPage pageFrom(const std::string& head) {
  return onlyPage(readText(head + "\nPanel 1\nMARA runs.\n"));
}

CopyItem itemFrom(const std::string& copy) {
  const Beat beat = beatFrom("Mara runs.\n\n" + copy);
  REQUIRE(beat.copy.size() == 1);
  return beat.copy.front();
}

}  // namespace

TEST_CASE("page heads are read in every usual shape") {
  CHECK(pageFrom("PAGE ONE").number == 1);
  CHECK(pageFrom("Page 3 (five panels)").announcedPanels == 5);
  CHECK(pageFrom("## Page 7").number == 7);
  CHECK(pageFrom("**PAGE TWENTY-ONE**").number == 21);
  CHECK(pageFrom("PAGE TWENTY FIVE PANELS").number == 20);
  CHECK(pageFrom("page ninety nine").number == 99);
  CHECK(pageFrom("PAGE 3 - 5 PANELS").announcedPanels == 5);
  CHECK(pageFrom("PAGE 2 - NINE-PANEL GRID").announcedPanels == 9);
  CHECK(pageFrom("PAGE 5: The Descent").title == "The Descent");
}

TEST_CASE("spreads are addressed by their left page") {
  for (const char* head :
       {"PAGES 4-5 (SPREAD)", "PAGES FOUR AND FIVE", "PAGES 4\u20135", "Pages 4 & 5",
        "PAGE 4 (DOUBLE-PAGE SPREAD)", "PAGES FOUR \u2014 FIVE"}) {
    CAPTURE(head);
    const ScriptPage page = pageFrom(head);
    CHECK(page.spread);
    CHECK(page.number == 4);
    CHECK(page.lastNumber == 5);
  }
}

TEST_CASE("a splash page has one dominant panel even without a panel head") {
  const Script script = readText("PAGE 12 - SPLASH\nMARA leaps off the tower.\n");
  const Beat& beat = onlyPage(script).beats.at(0);
  CHECK(beat.dominant);
  CHECK(beat.description == "MARA leaps off the tower.");
  CHECK(script.warnings.empty());
}

TEST_CASE("prose that begins like a head is no head") {
  const Script script =
      readText("PAGE 1\nPanel 1\nPage three of her diary.\nPanel beaters work.\n");
  CHECK(script.pages.size() == 1);
  CHECK(onlyPage(script).beats.size() == 1);
}

TEST_CASE("panel heads are read in every usual shape") {
  const Script script = readText(
      "PAGE 1\nPanel 1\nA door.\nPANEL TWO.\nA bell.\nPanel 3: A rope.\n**Panel 4** A boat.\n"
      "### Panel 5 - A crate.\n");
  const std::vector<Beat>& beats = onlyPage(script).beats;
  REQUIRE(beats.size() == 5);
  const char* expected[] = {"A door.", "A bell.", "A rope.", "A boat.", "A crate."};
  for (std::size_t i = 0; i < 5; ++i) {
    CHECK(beats[i].description == expected[i]);
    CHECK(beats[i].panel == static_cast<int>(i) + 1);
    CHECK(beats[i].id == "p1-" + std::to_string(i + 1));
  }
  CHECK(script.warnings.empty());
}

TEST_CASE("bare numbers head panels where no panel is named, and copy where one is") {
  const Script bare = readText("PAGE 1\n1. A door.\n2) A bell.\n3.\nA rope.\n");
  CHECK(onlyPage(bare).beats.size() == 3);
  CHECK(onlyPage(bare).beats[2].description == "A rope.");
  const Script named =
      readText("PAGE 1\nPanel 1\nMARA runs.\n1. MARA: Wait.\n2 MARA: Please.\n3. CAPTION: No.\n");
  REQUIRE(onlyPage(named).beats.size() == 1);
  CHECK(onlyPage(named).beats[0].copy.size() == 3);
  const Script mixed =
      readText("PAGE 1\n1. A door.\n1 MARA: Wait.\n2. A bell.\n2. MARA: Please.\n");
  REQUIRE(onlyPage(mixed).beats.size() == 2);
  CHECK(onlyPage(mixed).beats[1].copy.at(0).text == "Please.");
}

TEST_CASE("panels numbered right through the script start at 1 on each page") {
  const Script script = readText(
      "PAGE 1\nPanel 1\nA door.\nPanel 2\nA bell.\nPAGE 2\nPanel 3\nA rope.\nPanel 4\nA boat.\n");
  REQUIRE(script.pages.size() == 2);
  CHECK(script.pages[1].beats[0].id == "p2-1");
  CHECK(script.pages[1].beats[1].panel == 2);
  CHECK(script.warnings.empty());
}

TEST_CASE("cues give kind, speaker and whether the speaker is off the panel") {
  CHECK(itemFrom("CAPTION: Night.").kind == CopyKind::Caption);
  CHECK(itemFrom("CAP: Night.").kind == CopyKind::Caption);
  CHECK(itemFrom("CAPTION (MARA): Night.").speaker == "mara");
  CHECK(itemFrom("SFX: KRAANG").kind == CopyKind::Sfx);
  CHECK(itemFrom("TITLE: The Bell").kind == CopyKind::Title);
  CHECK(itemFrom("MARA (WHISPER): Hush.").kind == CopyKind::Whisper);
  CHECK(itemFrom("MARA (SHOUTS): Hey!").kind == CopyKind::Shout);
  CHECK(itemFrom("MARA (THINKS): Odd.").kind == CopyKind::Thought);
  CHECK(itemFrom("MARA (THOUGHT): Odd.").kind == CopyKind::Thought);
  CHECK(itemFrom("MARA: Hush.").kind == CopyKind::Speech);
  CHECK_FALSE(itemFrom("MARA: Hush.").offPanel);
  for (const char* off : {"MARA (OFF): Yes?", "MARA (O.S.): Yes?", "MARA (off-panel): Yes?",
                          "MARA, OFF: Yes?", "MARA OFF: Yes?"}) {
    CAPTURE(off);
    CHECK(itemFrom(off).offPanel);
    CHECK(itemFrom(off).speaker == "mara");
  }
}

TEST_CASE("the words of a cue stand on its line or below it") {
  CHECK(itemFrom("MARA: Hold on.").text == "Hold on.");
  CHECK(itemFrom("MARA:\nHold on.").text == "Hold on.");
  CHECK(itemFrom("MARA:\n\nHold on.").text == "Hold on.");
  CHECK(itemFrom("MARA\nHold on.").text == "Hold on.");
  CHECK(itemFrom("MARA (OFF)\nHold on.").offPanel);
  CHECK(itemFrom("Mara: Hold on.").text == "Hold on.");
  const CopyItem whispered = itemFrom("    MARA\n  (whispering)\n  Hold on.");
  CHECK(whispered.kind == CopyKind::Whisper);
  CHECK(whispered.text == "Hold on.");
}

TEST_CASE("copy of several paragraphs keeps them, and wrapped lines are joined") {
  CHECK(itemFrom("CAPTION: We were told.\n\nI did not listen.").text ==
        "We were told.\nI did not listen.");
  CHECK(itemFrom("CAPTION: a line long enough to have been wrapped by a machine,\nand its end.")
            .text == "a line long enough to have been wrapped by a machine, and its end.");
}

TEST_CASE("description after copy is not taken for copy when a picture is meant") {
  const Beat beat = beatFrom("Mara runs.\n\nMARA: Wait!\n\nShe falls on the stairs.");
  CHECK(beat.copy.at(0).text == "Wait!");
  CHECK(beat.description == "Mara runs.\nShe falls on the stairs.");
}

TEST_CASE("an emoji, smart quotes and Markdown marks neither hide a cue nor get lost") {
  const CopyItem item = itemFrom("* **MARA:** \u201cDon\u2019t\u201d *ring* it \U0001F514");
  CHECK(item.text == "\u201cDon\u2019t\u201d *ring* it \U0001F514");
  CHECK(item.speaker == "mara");
}

TEST_CASE("stress stays with the words, marks around the whole cue do not") {
  CHECK(itemFrom("MARA: I __never__ said that.").text == "I *never* said that.");
  CHECK(itemFrom("MARA: **Never!**").text == "*Never!*");
  CHECK(itemFrom("**MARA: Never.**").text == "Never.");
  CHECK(itemFrom("MARA:\nI said 2 * 3, *not* 4.").text == "I said 2 * 3, *not* 4.");
}

TEST_CASE("the cast section gives sex, height and build") {
  const Script script = readText(
      "THE BELL\n\nCAST\nMARA VOSS - diver, woman, 1.72 m, heavy\nTobin: boy, aged 9\n"
      "- CAPTAIN ODE (man, 6 ft 1, tall)\n\nPAGE 1\nPanel 1\nVoss and Ode dive.\n");
  CHECK(script.title == "THE BELL");
  REQUIRE(script.cast.size() == 3);
  CHECK(script.cast[0].sex == Sex::Female);
  CHECK(script.cast[0].heightM == doctest::Approx(1.72));
  CHECK(script.cast[0].build == "heavy");
  CHECK(script.cast[1].sex == Sex::Male);
  CHECK(script.cast[1].build == "child");
  CHECK(script.cast[2].heightM == doctest::Approx(1.854).epsilon(0.001));  // 73 in × 25.4 mm
  CHECK(script.pages[0].beats[0].figures.size() == 2);
  CHECK(script.warnings.empty());
}

TEST_CASE("the cast list tells ages in words and figures, and how many heads tall") {
  const Script script = readText(
      "CAST\nKIT - boy of eight\nORLA - woman in her seventies, slight\nBRAM - old man, stout\n"
      "HERO - man, heroic, 8½ heads tall\nPIA - woman, old coat\n\nPAGE 1\nPanel 1\nKit runs.\n");
  REQUIRE(script.cast.size() == 5);
  CHECK(script.cast[0].ageYears == 8);
  CHECK(script.cast[0].build == "child");
  CHECK(script.cast[1].ageYears == 75);
  CHECK(script.cast[2].ageYears >= 70);
  CHECK(script.cast[2].sex == Sex::Male);
  CHECK(script.cast[3].heads == doctest::Approx(8.5));
  CHECK(script.cast[3].build == "heroic");
  CHECK(script.cast[4].ageYears == 0);
}

TEST_CASE("without a cast section the cast is the speakers and the names in capitals") {
  const Script script = readText(
      "PAGE 1\nPanel 1\nA huge BELL. TOBIN pulls the rope. He is WET. It is wet.\nMARA: No.\n");
  REQUIRE(script.cast.size() == 2);
  CHECK(script.cast[0].id == "mara");
  CHECK(script.cast[1].id == "tobin");
  CHECK(script.cast[1].sex == Sex::Male);
}

TEST_CASE("a page head repeated as continued goes on with its page") {
  const Script script =
      readText("PAGE 1\nPanel 1\nA door.\nPAGE 1 (CONTINUED)\nPanel 2\nA bell.\n");
  CHECK(onlyPage(script).beats.size() == 2);
}

TEST_CASE("the sample scripts read without losing a page") {
  useSourcePresets();
  const Result<Script> orchard = readScriptFile(scriptData("orchard.txt"));
  REQUIRE(orchard.has_value());
  CHECK(orchard->pages.size() == 7);  // eight pages, two of them a spread
  CHECK(orchard->cast.size() == 4);
  const Result<Script> harbour = readScriptFile(scriptData("harbour_messy.txt"));
  REQUIRE(harbour.has_value());
  CHECK(harbour->pages.size() == 3);
}

TEST_CASE("a keyword beside a name gives kind and speaker, in either order") {
  for (const char* cue : {"CAPTION MARA: Night.", "MARA CAPTION: Night.", "CAPTION - MARA: Night.",
                          "MARA (V.O.): Night."}) {
    CAPTURE(cue);
    CHECK(itemFrom(cue).kind == CopyKind::Caption);
    CHECK(itemFrom(cue).speaker == "mara");
  }
  CHECK(itemFrom("MARA (CONT'D): Night.").kind == CopyKind::Speech);
  CHECK(itemFrom("MARA (O.S., WHISPERING): Night.").kind == CopyKind::Whisper);
}

TEST_CASE("whom a cue speaks to is looked at") {
  const Beat beat = beatFrom("Mara and Tobin stand.\n\nMARA (TO TOBIN): Wait.");
  CHECK(figureOf(beat, "mara").relation == "looks at");
  CHECK(figureOf(beat, "mara").target == "tobin");
}

TEST_CASE("heights are read in metres, centimetres, feet and inches") {
  const Script script = readText(
      "CAST\nA - woman, 172 cm\nB - man, 5'10\"\nC - man, 6 feet\nD - woman, 1.5m\n\n"
      "PAGE 1\nPanel 1\nA door.\n");
  REQUIRE(script.cast.size() == 4);
  CHECK(script.cast[0].heightM == doctest::Approx(1.72));
  CHECK(script.cast[1].heightM == doctest::Approx(1.778));  // 70 in × 25.4 mm
  CHECK(script.cast[2].heightM == doctest::Approx(1.829));  // 72 in × 25.4 mm, to the mm
  CHECK(script.cast[3].heightM == doctest::Approx(1.5));
}

TEST_CASE("another name in the notes of the cast names the same character") {
  const Script script =
      readText("CAST\nMARA - diver, known as \"Gull\"\n\nPAGE 1\nPanel 1\nGull runs.\nGULL: Up.\n");
  REQUIRE(script.cast.size() == 1);
  CHECK(script.pages[0].beats[0].figures.at(0).who == "mara");
  CHECK(script.pages[0].beats[0].copy.at(0).speaker == "mara");
}

TEST_CASE("a title line of its own gives the title") {
  CHECK(readText("Title: The Low Bell\nPAGE 1\nPanel 1\nA door.\n").title == "The Low Bell");
}

TEST_CASE("signs inside words are no Markdown, and a backslash keeps a sign") {
  CHECK(itemFrom("MARA: snake_case and 2 * 3").text == "snake_case and 2 * 3");
  CHECK(itemFrom("MARA: \\*not meant\\*").text == "*not meant*");
}

TEST_CASE("copy before the first panel head goes into that panel and is told") {
  const Script script = readText("PAGE 1\nCAPTION: Night.\nPanel 1\nA door.\nCAPTION: Later.\n");
  const Beat& beat = onlyPage(script).beats.at(0);
  REQUIRE(beat.copy.size() == 2);
  CHECK(beat.copy[0].text == "Night.");
  CHECK(warns(script, 2, "before the first panel"));
}
