// Things that a description names and the breakdown has no shape for: they are neither staged nor
// drawn, and the artist is told so.
#pragma once

#include <string>
#include <vector>

#include "script/breakdown.h"
#include "script/tokens.h"

namespace tw {

/// Names in the order of mention, each once: nouns behind an article or "her" that are no known
/// thing, person, place, part of a body or garment and no word of the picture itself. Known things
/// that the beat had no room for are among them.
std::vector<std::string> notDrawn(const std::vector<Token>& tokens,
                                  const std::vector<Mention>& mentions,
                                  const std::vector<PropMention>& things, const Lexicon& lexicon);

}  // namespace tw
