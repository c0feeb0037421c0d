#include "press/story_list.h"

#include <doctest/doctest.h>

#include <fmt/format.h>

#include "press/example_story_map.h"
#include "press/recorder.h"

namespace tw {

using namespace example;

namespace {

constexpr Rect kRoom{{10, 10}, {400, 60}};

StoryMap withFindings(std::size_t count) {
  StoryMap map = storyMap(4);
  for (std::size_t i = 0; i < count; ++i)
    map.findings.push_back({Severity::Should, fmt::format("head{}", i), "Its reason is here.",
                            "Its remedy is here.", "Tried: this.", 1});
  return map;
}

std::string listOf(const StoryMap& map) {
  const Typesetter typesetter;
  std::vector<std::size_t> all;
  for (std::size_t i = 0; i < map.findings.size(); ++i) all.push_back(i);
  Recorder surface;
  drawStoryList(surface, map, all, kRoom, typesetter);
  std::string words;
  for (const TypeLine& line : surface.words) words += line.text + " ";
  return words;
}

bool has(const std::string& text, const std::string& part) {
  return text.find(part) != text.npos;
}

}  // namespace

TEST_CASE("a few findings are told in full") {
  const std::string words = listOf(withFindings(3));
  for (const char* part : {"head0", "head2", "reason", "remedy", "Tried"}) CHECK(has(words, part));
}

TEST_CASE("what does not fit is left out from the least") {
  const std::string many = listOf(withFindings(40));
  CHECK(has(many, "head39"));
  CHECK_FALSE(has(many, "reason"));
  const std::string tooMany = listOf(withFindings(400));
  CHECK(has(tooMany, "head0"));
  CHECK_FALSE(has(tooMany, "head399"));
  CHECK(has(tooMany, "more: tierwright story"));
}

TEST_CASE("a silenced finding keeps its place and tells the reason instead of remedies") {
  StoryMap map = withFindings(3);
  map.findings[1].silencedWhy = "it is meant.";
  map.findings[1].remedy = "Never mind.";
  const std::string words = listOf(map);
  CHECK(has(words, "head1"));
  CHECK(has(words, "Silenced: it is meant."));
  CHECK_FALSE(has(words, "Never mind."));
}

TEST_CASE("few findings are set larger than many") {
  const Typesetter typesetter;
  const auto sizeOf = [&](std::size_t count) {
    const StoryMap map = withFindings(count);
    std::vector<std::size_t> all(count);
    for (std::size_t i = 0; i < count; ++i) all[i] = i;
    Recorder surface;
    drawStoryList(surface, map, all, kRoom, typesetter);
    return surface.words[1].sizePt;  // after the mark's number
  };
  CHECK(sizeOf(3) > sizeOf(400));
  CHECK(sizeOf(400) >= 6);
}

TEST_CASE("no finding is said in words") {
  CHECK(has(listOf(withFindings(0)), "Nothing is found"));
}

TEST_CASE("the list needs more height for more findings and never more than there is") {
  const Typesetter typesetter;
  const StoryMap map = withFindings(60);
  const double few = storyListHeight(map, {0, 1, 2}, 390, 50, typesetter);
  const double more = storyListHeight(map, {0, 1, 2, 3, 4, 5, 6}, 390, 50, typesetter);
  CHECK(few < more);
  std::vector<std::size_t> all(60);
  for (std::size_t i = 0; i < 60; ++i) all[i] = i;
  CHECK(storyListHeight(map, all, 390, 50, typesetter) == 50);
}

}  // namespace tw
