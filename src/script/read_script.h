// Reading a script with a lexicon at hand, for whoever reads many. Loading the lexicon takes longer
// than reading a short script.
#pragma once

#include <string>
#include <string_view>

#include "script/lexicon.h"
#include "script/script.h"

namespace tw {

/// readScript without loading the lexicon anew.
Result<Script> readScriptWith(const Lexicon& lexicon, std::string_view bytes,
                              const std::string& fileName);

}  // namespace tw
