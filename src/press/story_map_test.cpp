#include "press/story_map.h"

#include <doctest/doctest.h>

#include <cstdio>

#include "base/files.h"
#include "base/scratch_folder.h"
#include "press/example_story_map.h"

namespace tw {

using namespace example;

namespace {

std::string svgOf(const StoryMap& map) {
  const ScratchFolder scratch;
  REQUIRE(writeStoryMap(scratch / "map.svg", map, 60).has_value());
  return readFile(scratch / "map.svg").value();
}

/// As poppler's pdfinfo counts them.
int pagesOf(const std::filesystem::path& pdf) {
  FILE* pipe = popen(("pdfinfo '" + pdf.string() + "' | sed -n 's/^Pages: *//p'").c_str(), "r");
  REQUIRE(pipe != nullptr);
  int pages = 0;
  CHECK(std::fscanf(pipe, "%d", &pages) == 1);
  pclose(pipe);
  return pages;
}

bool has(const std::string& text, const std::string& part) {
  return text.find(part) != text.npos;
}

}  // namespace

TEST_CASE("every page is a named part of the map and says when it has no rough") {
  StoryMap map = storyMap(4);
  map.pages[2].picture = rough(0, "B", 3);
  const std::string svg = svgOf(map);
  for (const char* page : {"page-1", "page-2", "page-3", "page-4"}) CHECK(has(svg, page));
  CHECK(has(svg, "Page 2, no rough yet"));
  CHECK(has(svg, "Page 3, rough B"));
}

TEST_CASE("a finding is numbered on its page and in the list") {
  StoryMap map = storyMap(4);
  const std::string before = svgOf(map);
  map.findings.push_back(
      {Severity::Must, "page 3: spread starts left", "It is torn.", "Move it.", "", 3});
  map.pages[2].findings = {0};
  const std::string svg = svgOf(map);
  CHECK_FALSE(has(before, "finding-1"));
  CHECK(has(svg, "finding-1"));
  CHECK(has(svg, "page 3: spread starts left"));
}

TEST_CASE("a spread on an odd page is drawn in the places of both its numbers") {
  StoryMap map = storyMap(2);
  map.pages.push_back(mapPage(3, 2, true));
  map.pages.back().picture = rough(0, "A", 2);
  map.pages.back().picture->sheet = spreadOf(map.pages.back().picture->sheet);
  const std::string svg = svgOf(map);
  CHECK(has(svg, "page-3"));
  CHECK(has(svg, "page-4"));
}

TEST_CASE("a long story takes several sheets") {
  const ScratchFolder scratch;
  const StoryMap map = storyMap(30);
  REQUIRE(writeStoryMap(scratch / "map.png", map, 30).has_value());
  CHECK(std::filesystem::exists(scratch / "map.png"));
  CHECK(std::filesystem::exists(scratch / "map-2.png"));
  CHECK_FALSE(std::filesystem::exists(scratch / "map-3.png"));
  REQUIRE(writeStoryMap(scratch / "map.pdf", map, 30).has_value());
  CHECK(pagesOf(scratch / "map.pdf") == 2);
}

TEST_CASE("the same map gives the same bytes and no pages are bad input") {
  CHECK(svgOf(storyMap(9)) == svgOf(storyMap(9)));
  const ScratchFolder scratch;
  CHECK_FALSE(writeStoryMap(scratch / "map.svg", StoryMap{}, 60));
  CHECK_FALSE(writeStoryMap(scratch / "map.txt", storyMap(2), 60));
}

}  // namespace tw
