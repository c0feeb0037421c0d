// What a page's script names and its roughs do not show, in words for the artist.
#pragma once

#include <string>
#include <vector>

#include "job/beat.h"

namespace tw {

/// "tram, lever (panel 3); crane (panel 4)", or empty when everything that is named is drawn.
std::string thingsNotDrawn(const std::vector<Beat>& beats);
/// What to do about it.
inline constexpr const char* kDrawMissingThings =
    "Put them in as things that are known (PANEL.prop.add=THING) or as models "
    "(art/models/THING.obj); or draw them yourself.";

}  // namespace tw
