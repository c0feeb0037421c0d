// A cue: the part of a line of copy that says who speaks and how. A line is judged by itself; what
// surrounds it is for take_apart.cpp.
#pragma once

#include <functional>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "job/words.h"
#include "script/lexicon.h"

namespace tw {

struct Cue {
  CopyKind kind = CopyKind::Speech;
  std::vector<std::string> names;  ///< as written, none for captions, SFX and titles
  bool offPanel = false;
  std::string spokenTo;              ///< "(TO TOBIN)"
  std::vector<std::string> unknown;  ///< modifiers without a known meaning
  std::string words;                 ///< behind the colon
};

/// Whether a mixed-case or unpunctuated name is a speaker in this script.
using IsKnownName = std::function<bool(std::string_view)>;

/// "NAME (OFF): words", with or without an item number in front.
std::optional<Cue> colonCueFrom(std::string_view line, const CueWords& words,
                                const IsKnownName& isKnown);
/// "NAME" or "NAME (OFF)" alone on its line.
std::optional<Cue> bareCueFrom(std::string_view line, const CueWords& words,
                               const IsKnownName& isKnown);
/// Reads "whispering, to Tobin" into the cue; unknown parts are listed in it.
void applyModifiers(std::string_view text, const CueWords& words, Cue& cue);
/// A line that is one pair of brackets around words; the words.
std::optional<std::string_view> bracketedLine(std::string_view line);
/// The name before the colon when the line could be a cue in mixed case: "Mara: …".
std::optional<std::string> titleCaseCueName(std::string_view line, const CueWords& words);
/// The line without an item number ("3. MARA: …", "3 MARA: …").
std::string_view withoutItemNumber(std::string_view line);

}  // namespace tw
