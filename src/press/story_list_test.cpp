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
