#include "press/story_lanes.h"

#include <doctest/doctest.h>

#include <algorithm>

#include "press/example_story_map.h"
#include "press/finding_mark.h"
#include "press/recorder.h"

namespace tw {

using namespace example;

namespace {

Recorder lanesOf(const StoryMap& map) {
  const Typesetter typesetter;
  const StoryGrid grid(map, 0, 3);
  Recorder surface;
  drawStoryLanes(surface, map, grid, typesetter);
  return surface;
}

std::size_t said(const Recorder& lanes, const std::string& text) {
  return static_cast<std::size_t>(std::ranges::count(lanes.words, text, &TypeLine::text));
}

/// Dots of the stair of shots and whatever else is filled.
std::size_t filled(const Recorder& lanes) {
  return lanes.fills.size();
}

}  // namespace

TEST_CASE("lanes name what they show and give words in figures") {
  const Recorder lanes = lanesOf(storyMap(4));
  for (const char* word : {"reading time", "words", "shot size", "panel area"})
    CHECK(said(lanes, word) == 1);
  CHECK(said(lanes, "12") == 4);  // the fourth panel of each page
  CHECK(lanes.depth == 0);
}

TEST_CASE("pages without a rough are hatched and have no shots") {
  StoryMap map = storyMap(4);
  const Recorder none = lanesOf(map);
  for (StoryMapPage& page : map.pages) page.picture = rough(0, "A", 2);
  const Recorder all = lanesOf(map);
  CHECK(filled(all) == filled(none) + 16);  // a dot for each panel
}

TEST_CASE("slow and fast stretches are named and carry their finding") {
  StoryMap map = storyMap(4);
  map.findings.push_back({Severity::Look, "page 2: tempo", "It is slow.", "", "", 2});
  for (StoryMapPanel& panel : map.pages[1].panels) panel.pace = 1;
  map.pages[1].panels[0].paceFinding = 0;
  for (StoryMapPanel& panel : map.pages[3].panels) panel.pace = -1;
  const Recorder lanes = lanesOf(map);
  CHECK(said(lanes, "slow") == 1);
  CHECK(said(lanes, "fast") == 1);
  CHECK(said(lanes, "1") == 1);
  const auto of = [&](const char* text) {
    return std::ranges::find(lanes.words, text, &TypeLine::text)->at.x;
  };
  const double half = Typesetter().widthOf("slow", Face::Italic, 8.4) / 2;
  CHECK(of("slow") - half - of("1") > 1.35 * kFindingMarkMm);  // off the largest mark
}

}  // namespace tw
