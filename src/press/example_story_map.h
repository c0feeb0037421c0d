// A made-up story on the wall, for tests of the map: numbered pages of a few panels, some without a
// rough. For tests only.
#pragma once

#include "press/example_rough.h"
#include "press/story_map.h"

namespace tw::example {

inline StoryMapPage mapPage(int number, std::size_t panels, bool spread = false) {
  StoryMapPage page{.number = number, .spread = spread};
  for (std::size_t i = 0; i < panels; ++i)
    page.panels.push_back({.scene = 0,
                           .words = static_cast<int>(4 * i),
                           .seconds = 1.5 + static_cast<double>(i),
                           .curve = 2,
                           .shot = static_cast<ShotSize>(i % kShotSizes),
                           .areaShare = 0.1});
  return page;
}

inline StoryMap storyMap(int pages) {
  StoryMap map;
  map.title = "A long walk";
  map.about = "all of it";
  map.pageWide = 168.275;
  map.pageHigh = 260.35;
  map.middleSeconds = 2;
  map.scenes = {"EXT. ROAD - DAY"};
  for (int n = 1; n <= pages; ++n) map.pages.push_back(mapPage(n, 4));
  return map;
}

}  // namespace tw::example
