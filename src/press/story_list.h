// The findings below the story's map, in columns, each with the badge it wears on the pages.
#pragma once

#include "press/story_map.h"
#include "press/surface.h"
#include "press/typesetter.h"

namespace tw {

/// Those whose index is in `shown`. Where not all fits in full, remedies are left out first, then
/// reasons, and at last it is said how many more there are.
void drawStoryList(Surface& surface, const StoryMap& map, const std::vector<std::size_t>& shown,
                   const Rect& room, const Typesetter& typesetter);

/// What they need in full over that width, in even columns, mm; never more than `most`.
double storyListHeight(const StoryMap& map, const std::vector<std::size_t>& shown, double wide,
                       double most, const Typesetter& typesetter);

}  // namespace tw
