// Which scene runs how long: a band below the pages of the story's map, names above and below it in
// turn.
#pragma once

#include "press/story_grid.h"
#include "press/surface.h"
#include "press/typesetter.h"

namespace tw {

void drawSceneBands(Surface& surface, const StoryMap& map, const StoryGrid& grid,
                    const Typesetter& typesetter);

}  // namespace tw
