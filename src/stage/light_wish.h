// The artist's own light in trade words: "back-lit, rim 1", "key from the left and above, fill 0.2
// from the right", "low key, from below". And the light of a staging as it is stored and read back.
#pragma once

#include "stage/light.h"

namespace tw {

/// Parts stand between commas. A part is a light of presets/lexicon/light.json (by its name or one
/// of its words), "high key" or "low key", or [key | fill | rim] [strength] [from DIRECTION and …].
/// Directions are the picture's: left, right, above, below, behind, front. Strengths run from 0 to
/// 4; "no" is 0. Bad input says which part is not understood.
Result<Lighting> lightAsked(std::string_view words, const LightWords& known);

/// What the artist asks, else what the script's words name.
Lighting lightOf(const Beat& beat, const LightWords& known);
/// What the staging was made with, else as above.
Lighting lightOf(const Staging& staging, const Beat& beat, const LightWords& known);

/// As stored in a rough, on the grid that files keep, and back.
SetLight setLightOf(const Lighting& light);
Lighting lightingOf(const SetLight& light);

}  // namespace tw
