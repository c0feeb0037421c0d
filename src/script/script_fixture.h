// What the tests of this folder share: the lexicon's place and reading a script from a literal. A
// script that is refused fails the test at once, with the reason.
#pragma once

#include <doctest/doctest.h>

#include <cstdlib>
#include <string>

#include "base/files.h"
#include "script/script.h"

namespace tw {

inline void useSourcePresets() {
  setenv("TIERWRIGHT_PRESETS", TIERWRIGHT_SOURCE_DIR "/presets", 0);
}

inline std::filesystem::path scriptData(const char* name) {
  return std::filesystem::path(TIERWRIGHT_SOURCE_DIR) / "tests/data/script" / name;
}

inline Script readText(std::string_view text) {
  useSourcePresets();
  Result<Script> script = readScript(text, "script.txt");
  REQUIRE_MESSAGE(script.has_value(), (script ? std::string() : describe(script.error())));
  return *script;
}

inline bool warns(const Script& script, int line, std::string_view part) {
  for (const Problem& problem : script.warnings)
    if (problem.place.line == line && problem.sentence.find(part) != std::string::npos) return true;
  return false;
}

/// The first beat of a one-panel page with that description (and copy below it).
inline Beat beatFrom(std::string_view description) {
  return readText("CAST\nMARA - woman\nTOBIN - man\n\nPAGE 1\nPanel 1\n" + std::string(description))
      .pages.at(0)
      .beats.at(0);
}

inline BeatFigure figureOf(const Beat& beat, std::string_view who) {
  for (const BeatFigure& figure : beat.figures)
    if (figure.who == who) return figure;
  return {};
}

}  // namespace tw
