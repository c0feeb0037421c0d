#include "read/setting_shown.h"

#include <doctest/doctest.h>

namespace tw {
namespace {

StoryPanel seen(const char* scene, ShotSize shot, double figures) {
  StoryPanel panel;
  panel.scene = scene;
  panel.shot = shot;
  panel.figureShare = figures;
  return panel;
}

SeenStory storyOf(std::vector<std::vector<StoryPanel>> pages) {
  SeenStory story;
  for (std::size_t i = 0; i < pages.size(); ++i) {
    story.pages.push_back({static_cast<int>(i) + 1, false, true, "A", pages[i]});
    for (std::size_t k = 0; k < pages[i].size(); ++k)
      story.pages.back().panels[k].number = static_cast<int>(k) + 1;
  }
  return story;
}

}  // namespace

TEST_CASE("a wide shot shows the place and a near one does not") {
  CHECK(showsPlace(seen("s", ShotSize::ExtremeLong, 0)));
  CHECK(showsPlace(seen("s", ShotSize::VeryLong, 0.7)));
  CHECK(showsPlace(seen("s", ShotSize::Long, 0.3)));
  CHECK_FALSE(showsPlace(seen("s", ShotSize::Long, 0.6)));
  CHECK_FALSE(showsPlace(seen("s", ShotSize::Medium, 0.1)));
  StoryPanel nowhere = seen("s", ShotSize::ExtremeLong, 0);
  nowhere.isSet = false;
  CHECK_FALSE(showsPlace(nowhere));
}

TEST_CASE("a scene is followed over pages and through other scenes") {
  const SeenStory story =
      storyOf({{seen("a", ShotSize::CloseUp, 0.5), seen("b", ShotSize::Long, 0)},
               {seen("a", ShotSize::Medium, 0.5), seen("a", ShotSize::Long, 0.1)}});
  const auto told = settingsShown(story);
  REQUIRE(told.size() == 2);
  CHECK(told[0].scene == "a");
  CHECK(told[0].firstAt == 3);
  CHECK(told[0].certain);
  CHECK(told[1].firstAt == 1);
}

TEST_CASE("a scene that begins on a page without a rough is not judged") {
  SeenStory story = storyOf({{seen("a", ShotSize::CloseUp, 0.5)}, {seen("a", ShotSize::Long, 0)}});
  story.pages[0].measured = false;
  const auto told = settingsShown(story);
  CHECK_FALSE(told[0].certain);
  CHECK(told[0].measured == 1);
  story = storyOf({{seen("a", ShotSize::Long, 0)}, {seen("a", ShotSize::CloseUp, 0.5)}});
  story.pages[1].measured = false;
  CHECK(settingsShown(story)[0].certain);
}

}  // namespace tw
