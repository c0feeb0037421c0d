// The cast of a script: who is declared, who speaks, who is only named in capitals. A speaker whom
// the declared cast does not know is added and warned of.
#pragma once

#include "script/lexicon.h"
#include "script/raw_script.h"
#include "script/roster.h"

namespace tw {

/// Everyone in order: declared, then speakers in order of entry, then (without a declared cast)
/// names in capitals. Speakers outside a declared cast become warnings of the script.
Roster whoIsWho(RawScript& script, const Lexicon& lexicon, const std::string& fileName);

}  // namespace tw
