// What a panel's words say of looks: "puts on the helmet", "wrapped in a blanket", "now in her
// civilian coat", "a cut on her left cheek". And what the cast list says of single pages: "from
// page 6: wrapped in a blanket". Which of the words are garments is left to the wardrobe.
#pragma once

#include <map>
#include <optional>
#include <string>
#include <vector>

#include "job/look_words.h"
#include "script/breakdown.h"
#include "script/dated_looks.h"
#include "script/script.h"

namespace tw {

std::vector<FoundLook> looksIn(const std::vector<Token>& tokens,
                               const std::vector<Mention>& mentions, const LookWords& words);

/// Writes the looks found into the script's cast, with the ids of their beats. `byBeat` runs over
/// all beats in the script's order.
void placeLooks(const std::vector<std::vector<FoundLook>>& byBeat,
                const std::vector<DatedLook>& dated, Script& script);

}  // namespace tw
