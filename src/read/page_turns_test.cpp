#include "read/page_turns.h"

#include <doctest/doctest.h>
#include <rapidcheck.h>

namespace tw {
namespace {

StoryPage page(int number, std::size_t panels) {
  StoryPage out;
  out.number = number;
  out.measured = true;
  out.panels.resize(panels);
  for (std::size_t i = 0; i < panels; ++i) {
    out.panels[i].number = static_cast<int>(i) + 1;
    out.panels[i].areaShare = 0.9 / static_cast<double>(panels);
  }
  return out;
}

SeenStory pages(int count) {
  SeenStory story;
  for (int n = 1; n <= count; ++n) story.pages.push_back(page(n, 4));
  return story;
}

}  // namespace

TEST_CASE("an even page comes after a turn and an odd one faces it") {
  CHECK(pagePlaceOf(page(1, 1)) == PagePlace::Opens);
  CHECK(pagePlaceOf(page(2, 1)) == PagePlace::AfterTurn);
  CHECK(pagePlaceOf(page(7, 1)) == PagePlace::InView);
}

TEST_CASE("a plain story has no reveals") {
  CHECK(revealsOf(pages(8)).empty());
}

TEST_CASE("each sign makes a reveal or is too weak alone") {
  SeenStory story = pages(8);
  StoryPanel& panel = story.pages[4].panels[2];
  SUBCASE("words of the script") {
    panel.revealWord = "suddenly";
  }
  SUBCASE("the dominant picture") {
    panel.dominant = true;
  }
  SUBCASE("an entrance in the largest panel") {
    panel.enters = {"ben"};
    panel.areaShare = 0.5;
  }
  const auto reveals = revealsOf(story);
  REQUIRE(reveals.size() == 1);
  CHECK(reveals[0].at == StoryPlace{4, 2});
  CHECK(reveals[0].place == PagePlace::InView);
  CHECK_FALSE(reveals[0].why.empty());
}

TEST_CASE("an entrance alone and a large panel alone are no reveals") {
  SeenStory story = pages(8);
  story.pages[4].panels[2].enters = {"ben"};
  story.pages[6].panels[1].areaShare = 0.5;
  story.pages[0].panels[0].enters = {"ada"};
  story.pages[0].panels[0].areaShare = 0.5;  // page 1 introduces everybody
  CHECK(revealsOf(story).empty());
}

TEST_CASE("a splash is a reveal wherever it stands") {
  SeenStory story = pages(8);
  story.pages[3] = page(4, 1);
  REQUIRE(revealsOf(story).size() == 1);
  CHECK(revealsInView(revealsOf(story)) == 0);
}

TEST_CASE("a reveal moved from an even page to the one that faces it is in view") {
  CHECK(rc::check("page turn", [] {
    const auto at = *rc::gen::inRange<std::size_t>(1, 10);  // page 2 to 10
    const auto panel = *rc::gen::inRange<std::size_t>(0, 4);
    SeenStory story = pages(12);
    story.pages[at].panels[panel].revealWord = "reveals";
    const bool isOdd = story.pages[at].number % 2 == 1;
    RC_ASSERT(revealsInView(revealsOf(story)) == (isOdd ? 1 : 0));
    const auto moved = revealsOf(withPagesMoved(story, 0, 1));
    RC_ASSERT(revealsInView(moved) == (isOdd ? 0 : 1));
  }));
}

TEST_CASE("a spread that a page more would break is counted") {
  SeenStory story = pages(3);
  story.pages[1].spread = true;
  story.pages[2].number = 4;
  CHECK(brokenSpreads(story) == 0);
  CHECK(brokenSpreads(withPagesMoved(story, 1, 1)) == 1);
  CHECK(brokenSpreads(withPagesMoved(story, 2, 1)) == 0);
}

TEST_CASE("reveals are found in words and not inside other words") {
  CHECK(revealWordIn("Suddenly the door is open.") == "suddenly");
  CHECK(revealWordIn("The light REVEALS a stair.") == "reveals");
  CHECK(revealWordIn("He disappears.").empty());
  CHECK(revealWordIn("").empty());
}

}  // namespace tw
