#include "press/story_bands.h"

#include <doctest/doctest.h>

#include "press/example_story_map.h"
#include "press/recorder.h"

namespace tw {

using namespace example;

namespace {

Recorder bandsOf(const StoryMap& map) {
  const StoryGrid grid(map, 0, 3);
  Recorder surface;
  drawSceneBands(surface, map, grid, Typesetter{});
  return surface;
}

}  // namespace

TEST_CASE("a scene that runs on has one bar and one name") {
  const Recorder bands = bandsOf(storyMap(4));
  REQUIRE(bands.words.size() == 1);
  CHECK(bands.words[0].text == "EXT. ROAD - DAY");
  CHECK(bands.fills.size() == 1);
}

TEST_CASE("a long scene name takes two lines in a short scene") {
  StoryMap map = storyMap(4);
  map.scenes = {"EXT. ROAD - DAY", "INT. BELL CHAMBER - UNDERWATER", "EXT. FIELD - NIGHT"};
  for (StoryMapPanel& panel : map.pages[1].panels) panel.scene = 1;
  for (StoryMapPanel& panel : map.pages[2].panels) panel.scene = 2;
  for (StoryMapPanel& panel : map.pages[3].panels) panel.scene = 1;
  // A page of four panels is some 60 mm wide here; two panels of it are too short for one line.
  map.pages[1].panels[2].scene = map.pages[1].panels[3].scene = 2;
  map.pages[2].panels[0].scene = map.pages[2].panels[1].scene = 0;
  const Recorder bands = bandsOf(map);
  for (const TypeLine& line : bands.words) CHECK(line.text.find("…") == line.text.npos);
}

}  // namespace tw
