// The law of the reader: no word of a script vanishes. Made-up words are scattered over the shapes
// of a script; each must come back in a beat, a head, the cast or a warning.
#include <rapidcheck.h>

#include <algorithm>

#include "script/script_fixture.h"

using namespace tw;

namespace {

/// "qza", "qzb" …: words that no list knows.
std::string word(int n) {
  std::string out = "qz";
  do {
    out += static_cast<char>('a' + n % 26);
    n /= 26;
  } while (n > 0);
  return out + "q";
}

std::string upper(std::string text) {
  for (char& c : text) c = static_cast<char>(std::toupper(c));
  return text;
}

std::string lineOfShape(int shape, const std::string& w) {
  switch (shape) {
    case 0:
      return "Panel 1\n" + w;
    case 1:
      return "Panel 2: " + w;
    case 2:
      return upper(w) + ": " + w;
    case 3:
      return upper(w) + "\n" + w;
    case 4:
      return "CAPTION: " + w;
    case 5:
      return w;
    case 6:
      return "\n" + w;
    case 7:
      return "PAGE 2: " + w;
    case 8:
      return "1. " + w;
    case 9:
      return "MARA (" + w + "): " + w;
    case 10:
      return "(" + w + ")";
    case 11:
      return "CAST\n" + upper(w) + " - " + w;
    case 12:
      return "## " + w + "\n- *" + w + "*";
    case 13:
      return "INT. " + upper(w);
    case 14:
      return "SFX (" + w + "): " + w + "\n\n" + w + "!";
    case 15:
      return "Panels 2-4\n" + w;
    case 16:
      return "FLASHBACK - " + upper(w);
    case 17:
      return "CAST\n" + upper(w) + " - " + w + "; from page 1: " + w;
    default:
      return "2 MARA:\n" + w;
  }
}

std::string everythingIn(const Script& script) {
  std::string all = script.title;
  for (const Character& person : script.cast) {
    all += " " + person.name + " " + person.note;
    for (const LookNote& look : person.looks) all += " " + look.words;
  }
  for (const ScriptPage& page : script.pages) {
    all += " " + page.title + " " + page.note;
    for (const Beat& beat : page.beats) {
      all += " " + beat.description;
      for (const CopyItem& item : beat.copy) all += " " + item.text;
    }
  }
  return all + " " + describe(script.warnings);
}

bool contains(const std::string& all, const std::string& w) {
  return all.find(w) != std::string::npos || all.find(upper(w)) != std::string::npos;
}

}  // namespace

TEST_CASE("no word of a script is lost") {
  useSourcePresets();
  CHECK(rc::check("each word comes back", [] {
    const auto shapes = *rc::gen::container<std::vector<int>>(rc::gen::inRange(0, 19));
    const std::size_t head = shapes.empty() ? 0 : *rc::gen::inRange<std::size_t>(0, shapes.size());
    std::string text;
    for (std::size_t i = 0; i < shapes.size(); ++i) {
      if (i == head) text += "PAGE 1\n";
      text += lineOfShape(shapes[i], word(static_cast<int>(i))) + "\n";
    }
    if (shapes.empty()) text = "PAGE 1\n";
    RC_LOG() << text;
    const Result<Script> script = readScript(text, "law.txt");
    RC_ASSERT(script.has_value());
    const std::string all = everythingIn(*script);
    for (std::size_t i = 0; i < shapes.size(); ++i)
      RC_ASSERT(contains(all, word(static_cast<int>(i))));
  }));
}

TEST_CASE("beat ids are unique whatever the numbers say") {
  useSourcePresets();
  CHECK(rc::check("unique ids", [] {
    const auto numbers = *rc::gen::container<std::vector<int>>(rc::gen::inRange(0, 12));
    std::string text = "PAGE 1\n";
    for (const int n : numbers)
      text += n > 8 ? "PAGE " + std::to_string(n - 8) + "\n"
                    : "Panel " + std::to_string(n) + "\nA door.\n";
    const Result<Script> script = readScript(text, "law.txt");
    RC_ASSERT(script.has_value());
    std::vector<std::string> ids;
    for (const ScriptPage& page : script->pages)
      for (const Beat& beat : page.beats) ids.push_back(beat.id);
    std::sort(ids.begin(), ids.end());
    RC_ASSERT(std::adjacent_find(ids.begin(), ids.end()) == ids.end());
  }));
}

TEST_CASE("each script of the fuzzer's corpus is read, with at least one page") {
  useSourcePresets();
  int read = 0;
  for (const auto& entry : std::filesystem::directory_iterator(std::string(TIERWRIGHT_SOURCE_DIR) +
                                                               "/tests/fuzz/corpus/script")) {
    CAPTURE(entry.path().filename().string());
    const Result<Script> script = readScriptFile(entry.path());
    REQUIRE_MESSAGE(script, (script ? std::string() : describe(script.error())));
    CHECK_FALSE(script->pages.empty());
    ++read;
  }
  CHECK(read >= 6);
}
