#include <algorithm>
#include <set>

#include "script/script_fixture.h"

using namespace tw;

namespace {

constexpr const char* kFirst =
    "PAGE 1\nPanel 1\nMARA climbs the ladder of the tower.\nMARA: Up.\nPanel 2\n"
    "TOBIN pulls the wet rope by the winch.\nPAGE 2\nPanel 1\nThe bell swings over the harbour.\n";

struct Revision {
  std::vector<ScriptPage> pages;
  std::vector<ScriptChange> changes;
  bool says(int page, int panel, std::string_view what) const {
    return std::ranges::any_of(changes, [&](const ScriptChange& change) {
      return change.page == page && change.panel == panel &&
             change.what.find(what) != std::string::npos;
    });
  }
};

Revision revise(const std::string& text) {
  Revision revision{readText(text).pages, {}};
  revision.changes = carryOver(readText(kFirst).pages, revision.pages);
  return revision;
}

}  // namespace

TEST_CASE("the same script again changes nothing") {
  const Revision revision = revise(kFirst);
  CHECK(revision.changes.empty());
  CHECK(revision.pages[0].beats[1].id == "p1-2");
}

TEST_CASE("an inserted panel gets a new id and the others keep theirs") {
  const Revision revision = revise(
      "PAGE 1\nPanel 1\nA gull on the roof.\nPanel 2\nMARA climbs the ladder of the tower.\n"
      "MARA: Up.\nPanel 3\nTOBIN pulls the wet rope by the winch.\nPAGE 2\nPanel 1\n"
      "The bell swings over the harbour.\n");
  const std::vector<Beat>& beats = revision.pages[0].beats;
  CHECK(beats[1].id == "p1-1");
  CHECK(beats[1].copy[0].id == "p1-1-c1");
  CHECK(beats[2].id == "p1-2");
  CHECK(beats[0].id == "p1-1b");
  CHECK(revision.says(1, 1, "new panel"));
  CHECK(revision.says(1, 2, "moved from panel 1"));
}

TEST_CASE("changed words keep the id and are told") {
  const Revision revision = revise(
      "PAGE 1\nPanel 1\nMARA climbs the steep ladder of the tower.\nMARA: Up we go.\nPanel 2\n"
      "TOBIN pulls the wet rope by the winch.\nPAGE 2\nPanel 1\nThe bell swings over the "
      "harbour.\n");
  CHECK(revision.pages[0].beats[0].id == "p1-1");
  CHECK(revision.says(1, 1, "description changed"));
  CHECK(revision.says(1, 1, "copy changed: mara: \u201cUp we go.\u201d"));
  CHECK(revision.pages[0].beats[0].copy[0].id == "p1-1-c2");
}

TEST_CASE("a panel that is gone or moved to another page is told") {
  const Revision revision = revise(
      "PAGE 1\nPanel 1\nTOBIN pulls the wet rope by the winch.\nPAGE 2\nPanel 1\n"
      "The bell swings over the harbour.\nPanel 2\nMARA climbs the ladder of the tower.\nMARA: "
      "Up.\n");
  CHECK(revision.says(1, 1, "moved from panel 2"));
  CHECK(revision.says(2, 2, "moved from page 1 panel 1"));
  const Revision shorter =
      revise("PAGE 1\nPanel 1\nMARA climbs the ladder of the tower.\nMARA: Up.\n");
  CHECK(shorter.says(1, 2, "panel gone"));
  CHECK(shorter.says(2, 1, "panel gone"));
}

TEST_CASE("no two beats share an id after a revision") {
  const Revision revision = revise(
      "PAGE 1\nPanel 1\nNothing alike here.\nPanel 2\nOther words again.\nPanel 3\nFresh.\n"
      "PAGE 2\nPanel 1\nTOBIN pulls the wet rope by the winch.\n");
  std::vector<std::string> ids;
  for (const ScriptPage& page : revision.pages)
    for (const Beat& beat : page.beats) ids.push_back(beat.id);
  std::ranges::sort(ids);
  CHECK(std::ranges::adjacent_find(ids) == ids.end());
}

TEST_CASE("however often a panel is inserted at one place, ids stay apart") {
  std::vector<ScriptPage> pages = readText(kFirst).pages;
  std::string inserted = "PAGE 1\n";
  for (int i = 1; i <= 30; ++i)
    inserted +=
        "Panel " + std::to_string(i) + "\nGull number " + std::to_string(i * i * 7919) + ".\n";
  for (ScriptPage& page : pages)  // an id for each letter is taken already
    if (page.number == 1)
      for (char letter = 'b'; letter <= 'z'; ++letter) {
        Beat beat = page.beats[0];
        beat.id = std::string("p1-1") + letter;
        beat.description = std::string(12, letter);
        beat.copy.clear();
        page.beats.push_back(beat);
      }
  std::vector<ScriptPage> after = readText(inserted).pages;
  carryOver(pages, after);
  std::set<std::string> ids;
  for (const Beat& beat : after[0].beats) ids.insert(beat.id);
  CHECK(ids.size() == after[0].beats.size());
  CHECK(ids.contains("p1-1x2"));
}

TEST_CASE("a panel that becomes or ceases to be the main one is told") {
  const std::string text = "PAGE 1\nPanel 1\nMARA leaps over the wet rope.\n";
  const std::string main = "PAGE 1\nPanel 1\nMain panel: MARA leaps over the wet rope.\n";
  std::vector<ScriptPage> plain = readText(text).pages, chosen = readText(main).pages;
  const auto now = carryOver(plain, chosen);
  CHECK(std::ranges::any_of(now, [](const ScriptChange& c) { return c.what == "now dominant"; }));
  const auto then = carryOver(chosen, plain);
  CHECK(std::ranges::any_of(then,
                            [](const ScriptChange& c) { return c.what == "no longer dominant"; }));
}
