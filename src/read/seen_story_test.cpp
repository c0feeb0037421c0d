#include "read/seen_story.h"

#include <doctest/doctest.h>

namespace tw {

TEST_CASE("places run through the pages in their order and are named as people name them") {
  SeenStory story;
  story.pages.resize(2);
  story.pages[0].number = 2;
  story.pages[0].spread = true;
  story.pages[1].number = 4;
  story.pages[0].panels.resize(2);
  story.pages[1].panels.resize(1);
  story.pages[0].panels[1].number = 2;
  const auto places = placesOf(story);
  REQUIRE(places.size() == 3);
  CHECK(places[1] == StoryPlace{0, 1});
  CHECK(inWords(story, places[1]) == "pages 2–3 panel 2");
  CHECK(inWords(story, places[2]) == "page 4 panel 1");
}

}  // namespace tw
