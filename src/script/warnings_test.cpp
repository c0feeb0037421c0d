// Each thing that does not add up is told with its line.
#include <algorithm>

#include "base/scratch_folder.h"
#include "script/lexicon.h"
#include "script/script_fixture.h"

using namespace tw;

TEST_CASE("a page that is missing or comes twice is told with its line") {
  const Script script =
      readText("PAGE 1\nPanel 1\nA door.\nPAGE 3\nPanel 1\nA bell.\nPAGE 3\nPanel 1\nA rope.\n");
  CHECK(warns(script, 4, "Page 2 is missing"));
  CHECK(warns(script, 7, "Page 3 comes twice"));
  CHECK(script.pages.size() == 3);
  CHECK(script.pages[1].beats[0].id != script.pages[2].beats[0].id);
}

TEST_CASE("a count of panels that differs from the head is told") {
  CHECK(warns(readText("PAGE 1 (3 panels)\nPanel 1\nA door.\nPanel 2\nA bell.\n"), 1,
              "announces 3 panels; the page has 2"));
}

TEST_CASE("a panel number that is missing or comes twice is told and keeps ids apart") {
  const Script script = readText("PAGE 1\nPanel 1\nA door.\nPanel 3\nA bell.\nPanel 3\nA rope.\n");
  CHECK(warns(script, 4, "Panel 2 is missing"));
  CHECK(warns(script, 6, "Panel 3 comes twice"));
  CHECK(script.pages[0].beats[2].id == "p1-4");
}

TEST_CASE("a speaker outside the declared cast is told, with the likely name") {
  const Script script = readText("CAST\nMARA - diver\nPAGE 1\nPanel 1\nA door.\nMARRA: Hush.\n");
  CHECK(warns(script, 6, "MARRA speaks but is not in the cast"));
  CHECK(script.warnings.at(0).advice.find("was MARA meant") != std::string::npos);
  CHECK(script.cast.size() == 2);
}

TEST_CASE("text outside any panel is told and kept as the page's note") {
  const Script script = readText("PAGE 1\nAll of this is at night.\nPanel 1\nA door.\n");
  CHECK(warns(script, 2, "Text outside any panel"));
  CHECK(script.pages[0].note == "All of this is at night.");
}

TEST_CASE("text before page one that is neither title nor cast is told in full") {
  CHECK(warns(readText("THE BELL\nDraft of some spring\nPAGE 1\nPanel 1\nA door.\n"), 2,
              "Draft of some spring"));
}

TEST_CASE("an empty panel, a cue without words and an unknown mark are told") {
  const Script script =
      readText("PAGE 1\nPanel 1\nPanel 2\nA door.\nMARA:\nMARA (IN MAUVE): Hush.\n");
  CHECK(warns(script, 2, "is empty"));
  CHECK(warns(script, 5, "has no words"));
  CHECK(warns(script, 6, "IN MAUVE"));
}

TEST_CASE("warnings stand in the order of their lines") {
  useSourcePresets();
  const Result<Script> script = readScriptFile(scriptData("harbour_messy.txt"));
  REQUIRE(script.has_value());
  CHECK(script->warnings.size() > 6);
  CHECK(
      std::ranges::is_sorted(script->warnings, {}, [](const Problem& p) { return p.place.line; }));
}

TEST_CASE("what is no script is refused with a reason and advice") {
  useSourcePresets();
  const std::string binary("\x01\x02\x00\x03\x04\x05\x06\x07\x01\x02\x03", 11);
  const std::string absurd(kLargestTextBytes + 1, 'a');
  for (const std::string& bytes : {std::string(), std::string(" \n\t"), binary, absurd,
                                   std::string("%PDF-1.4"), std::string("{\\rtf1 PAGE 1"),
                                   std::string("PK\x03\x04 PAGE 1"), std::string("Just a text.")}) {
    const Result<Script> script = readScript(bytes, "odd.txt");
    REQUIRE_FALSE(script.has_value());
    CHECK(script.error().front().cause == Cause::BadInput);
    CHECK_FALSE(script.error().front().sentence.empty());
    CHECK_FALSE(script.error().front().advice.empty());
    CHECK(script.error().front().place.file == "odd.txt");
  }
}

TEST_CASE("pages that run backwards are turned round and told") {
  const Script script = readText("PAGES 5-4\nPanel 1\nA door.\n");
  CHECK(warns(script, 1, "Pages 5-4 run backwards"));
  CHECK(script.pages.at(0).number == 4);
}

TEST_CASE("several pages missing, more than two under one head, and a page too late are told") {
  CHECK(warns(readText("PAGE 1\nPanel 1\nA door.\nPAGE 5\nPanel 1\nA bell.\n"), 4,
              "Pages 2 to 4 are missing"));
  CHECK(warns(readText("PAGES 4-7\nPanel 1\nA door.\n"), 1, "a spread has two pages"));
  CHECK(warns(readText("PAGE 3\nPanel 1\nA door.\nPAGE 2\nPanel 1\nA bell.\n"), 4,
              "Page 2 comes after page 3"));
}

TEST_CASE("a lexicon that is missing or damaged is our fault and says which file") {
  useSourcePresets();
  const std::string before = getenv("TIERWRIGHT_PRESETS");
  const ScratchFolder scratch;
  setenv("TIERWRIGHT_PRESETS", scratch.path().c_str(), 1);
  const Result<Lexicon> missing = loadLexicon();
  std::filesystem::create_directories(scratch / "lexicon");
  REQUIRE(writeFileAtomically(scratch / "lexicon/cues.json", "{ \"keywords\": "));
  const Result<Lexicon> damaged = loadLexicon();
  setenv("TIERWRIGHT_PRESETS", before.c_str(), 1);
  for (const Result<Lexicon>* lexicon : {&missing, &damaged}) {
    REQUIRE_FALSE(lexicon->has_value());
    CHECK(lexicon->error()[0].cause == Cause::OurFault);
    CHECK(lexicon->error()[0].sentence.find("cues.json") != std::string::npos);
  }
}
