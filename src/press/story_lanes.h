// The curves below the pages of the story's map: reading time, words, shot sizes from far to near,
// panel areas. Told apart by what they are drawn with as well as by ink.
#pragma once

#include "press/story_grid.h"
#include "press/surface.h"
#include "press/typesetter.h"

namespace tw {

void drawStoryLanes(Surface& surface, const StoryMap& map, const StoryGrid& grid,
                    const Typesetter& typesetter);

}  // namespace tw
