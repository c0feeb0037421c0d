#include "job/panel_list.h"

#include <doctest/doctest.h>
#include <fmt/format.h>

#include <filesystem>

#include "base/files.h"
#include "geometry/polygon.h"

namespace tw {
namespace {

Result<std::vector<MarkedPage>> read(const std::string& text) {
  return readPanelList(text, "pages.json");
}

/// The one problem of a page with this one panel.
Problem problemOf(const std::string& panel) {
  const auto pages = read(R"([{"page": "7", "panels": [{"bbox": [0, 0, 9, 9]}, )" + panel + "]}]");
  REQUIRE(!pages);
  REQUIRE(pages.error().size() == 1);
  return pages.error().front();
}

bool says(const Problem& problem, std::string_view words) {
  return describe(problem).find(words) != std::string::npos;
}

TEST_CASE("a list of pages is read with its boxes and outlines") {
  const auto pages = read(R"([
    {"page": "A", "width": 100, "height": 150, "direction": "right-to-left", "picture": "a.png",
     "panels": [{"bbox": [1, 2, 31, 42]},
                {"polygon": [[40, 0], [90, 0], [80, 40]], "bbox": [0, 0, 1, 1]},
                {"hull": [[0, 50], [9, 50], [9, 60]], "bbox": [0, 0, 1, 1]}]},
    {"panels": []}])");
  REQUIRE(pages);
  REQUIRE(pages->size() == 2);
  const MarkedPage& page = pages->front();
  CHECK(page.name == "A");
  CHECK(page.width == 100);
  CHECK(page.height == 150);
  CHECK(page.direction == ReadingDirection::RightToLeft);
  CHECK(page.picture == "a.png");
  REQUIRE(page.panels.size() == 3);
  CHECK(bounds(page.panels[0].outline) == Rect{{1, 2}, {31, 42}});
  CHECK(page.panels[1].outline.points.size() == 3);
  CHECK(bounds(page.panels[2].outline) == Rect{{0, 50}, {9, 60}});
  CHECK(pages->back().name == "2");
  CHECK(pages->back().panels.empty());
  CHECK(!pages->back().direction);
}

TEST_CASE("one page by itself is read as well") {
  const auto pages = read(R"({"page": 12, "panels": [{"bbox": [0, 0, 10, 10]}]})");
  REQUIRE(pages);
  REQUIRE(pages->size() == 1);
  CHECK(pages->front().name == "12");
}

TEST_CASE("both spellings of a direction are understood") {
  for (const char* word : {"ltr", "left-to-right"}) {
    const auto pages = read(fmt::format(R"({{"direction": "{}", "panels": []}})", word));
    REQUIRE(pages);
    CHECK(pages->front().direction == ReadingDirection::LeftToRight);
  }
  const auto wrong = read(R"({"page": "9", "direction": "down", "panels": []})");
  REQUIRE(!wrong);
  CHECK(says(wrong.error().front(), R"(Page "9": Expected ltr, rtl)"));
  CHECK(says(wrong.error().front(), "/direction"));
}

TEST_CASE("what a panel shows is kept") {
  const auto pages = read(R"({"panels": [{"bbox": [0, 0, 50, 50], "order": 1, "focus": [20, 30],
    "lead": [1, -0.5], "faces": [[1, 1, 5, 5]], "figures": [[1, 1, 9, 30], [20, 1, 30, 40]],
    "hands": [[3, 3, 4, 4]], "props": [[8, 8, 9, 9]],
    "copy": [[10, 0, 20, 8], {"bbox": [30, 0, 48, 9], "words": "I  never\nsaid that."},
             {"bbox": [30, 20, 48, 29], "words": 12}]}]})");
  REQUIRE(pages);
  const MarkedPanel& panel = pages->front().panels.front();
  CHECK(panel.order == 1);
  CHECK(panel.focus == Point{20, 30});
  CHECK(panel.lead == Vector{1, -0.5});
  CHECK(panel.faces.size() == 1);
  CHECK(panel.figures.size() == 2);
  CHECK(panel.hands.size() == 1);
  CHECK(panel.props.size() == 1);
  REQUIRE(panel.copy.size() == 3);
  CHECK(panel.copy[0].count == 0);
  CHECK(panel.copy[1].count == 4);
  CHECK(panel.copy[1].words == "I  never\nsaid that.");
  CHECK(panel.copy[2].count == 12);
}

TEST_CASE("fields that are not known are passed over") {
  const auto pages = read(R"({"size_note": "?", "panels": [{"bbox": [0, 0, 9, 9], "fill": 0.9}]})");
  CHECK(pages.has_value());
}

TEST_CASE("a field that is null counts as absent") {
  const auto pages = read(R"({"direction": null, "panels": [{"bbox": [0, 0, 9, 9],
                              "polygon": null, "order": null}]})");
  REQUIRE(pages);
  CHECK(!pages->front().panels.front().order);
}

TEST_CASE("a faulty panel is told by page panel field and remedy") {
  const Problem inverted = problemOf(R"({"bbox": [30, 0, 10, 9]})");
  CHECK(says(inverted, R"(pages.json at /0/panels/1/bbox: Page "7", panel 2:)"));
  CHECK(says(inverted, "turned inside out"));
  CHECK(says(inverted, "Swap its corners"));
  CHECK(says(problemOf(R"({"bbox": [5, 0, 5, 9]})"), "without area"));
  CHECK(says(problemOf(R"({"bbox": [1, 2, 3]})"), "four numbers"));
  CHECK(says(problemOf(R"({"bbox": [0, 0, "9", 9]})"), "four numbers"));
  CHECK(says(problemOf(R"({"bbox": [0, 0, 1e9, 9]})"), "1000000"));
  CHECK(says(problemOf(R"({"name": "x"})"), "found none of them"));
  CHECK(says(problemOf("17"), "a panel in braces"));
  CHECK(says(problemOf(R"({"polygon": [[0, 0], [9, 9]]})"), "at least 3 corners"));
  CHECK(says(problemOf(R"({"polygon": [[0, 0], [9, 9], [4, 4], [2, 2]]})"), "a line or a point"));
  CHECK(says(problemOf(R"({"polygon": [[0, 0], [9, 9], [4]]})"), "a corner [x, y]"));
  CHECK(says(problemOf(R"({"hull": {}, "bbox": [0, 0, 9, 9]})"), "/hull"));
  CHECK(says(problemOf(R"({"bbox": [0, 0, 9, 9], "order": 0})"), "from 1 to 64"));
  CHECK(says(problemOf(R"({"bbox": [0, 0, 9, 9], "order": 1.5})"), "whole number"));
  CHECK(says(problemOf(R"({"bbox": [0, 0, 9, 9], "lead": [0, 0]})"), "no length"));
  CHECK(says(problemOf(R"({"bbox": [0, 0, 9, 9], "focus": 3})"), "a point"));
  CHECK(says(problemOf(R"({"bbox": [0, 0, 9, 9], "faces": [[0, 0, 1]]})"), "/faces/0"));
  CHECK(says(problemOf(R"({"bbox": [0, 0, 9, 9], "copy": [{"words": "x"}]})"), "/copy/0"));
  CHECK(says(problemOf(R"({"bbox": [0, 0, 9, 9], "copy": [{"bbox": [0, 0, 9, 9], "words": []}]})"),
             "/copy/0/words"));
}

TEST_CASE("several problems are gathered and each has advice") {
  const auto pages = read(R"([{"page": "1", "width": -3, "panels": [{"bbox": [9, 9, 0, 0]}, 4]},
                              {"page": "2"}, 7])");
  REQUIRE(!pages);
  CHECK(pages.error().size() == 5);
  for (const Problem& problem : pages.error()) {
    CHECK(problem.cause == Cause::BadInput);
    CHECK(!problem.advice.empty());
  }
}

TEST_CASE("a hostile file does not make a report of its own size") {
  std::string text = "[";
  for (int i = 0; i < 500; ++i) text += (i ? ",1" : "1");
  const auto pages = read(text + "]");
  REQUIRE(!pages);
  CHECK(pages.error().size() <= 50);
}

TEST_CASE("a page of more than 64 panels is refused with what to do") {
  const auto page = [](int count) {
    std::string text = R"({"page": "wide", "panels": [)";
    for (int i = 0; i < count; ++i)
      text += fmt::format("{}{{\"bbox\": [{}, 0, {}, 9]}}", i ? ", " : "", i * 10, i * 10 + 9);
    return text + "]}";
  };
  CHECK(read(page(64)).has_value());
  const auto refused = read(page(65));
  REQUIRE(!refused);
  CHECK(says(refused.error().front(), "The page has 65 panels"));
  CHECK(says(refused.error().front(), "Split the page"));
}

TEST_CASE("what is no list of pages is refused") {
  CHECK(!read(""));
  CHECK(!read("[]"));
  CHECK(!read("42"));
  CHECK(!read("[{\"panels\": 3}]"));
  CHECK(!read("[{\"panels\": [{\"bbox\": [0, 0, NaN, 9]}]}]"));
  CHECK(!read("[{\"panels\": [{\"bbox\": [0, 0, 1e999, 9]}]}]"));
  CHECK(!read("[{\"panels\": [{\"bbox\": [0, 0, 9, 9]}]"));
}

TEST_CASE("the intended order is known when every panel has its own number") {
  const auto pages = read(R"([
    {"panels": [{"bbox": [0, 0, 9, 9], "order": 3}, {"bbox": [0, 0, 9, 9], "order": 1},
                {"bbox": [0, 0, 9, 9], "order": 2}]},
    {"panels": [{"bbox": [0, 0, 9, 9], "order": 1}, {"bbox": [0, 0, 9, 9]}]}, {"panels": []}])");
  REQUIRE(pages);
  CHECK(intendedOrder((*pages)[0]) == std::vector<int>{1, 2, 0});
  CHECK(!intendedOrder((*pages)[1]));
  CHECK(!intendedOrder((*pages)[2]));
  const auto doubled = read(R"({"panels": [{"bbox": [0, 0, 9, 9], "order": 2},
                                           {"bbox": [0, 0, 9, 9], "order": 2}]})");
  REQUIRE(!doubled);
  CHECK(says(doubled.error().front(), "stands at two panels"));
}

TEST_CASE("an outline that crosses itself is taken as it is") {
  const auto pages = read(R"({"panels": [{"polygon": [[0, 0], [9, 9], [9, 0], [0, 9]]}]})");
  REQUIRE(pages);
  CHECK(pages->front().panels.front().outline.points.size() == 4);
}

TEST_CASE("every file of the fuzzing corpus is read or refused with a sentence") {
  const std::filesystem::path corpus = TIERWRIGHT_SOURCE_DIR "/tests/fuzz/corpus/panel_list";
  int files = 0;
  for (const auto& entry : std::filesystem::directory_iterator(corpus)) {
    const auto bytes = readFile(entry.path());
    REQUIRE(bytes);
    const auto pages = readPanelList(*bytes, entry.path().filename().string());
    ++files;
    if (pages) continue;
    for (const Problem& problem : pages.error()) CHECK(!problem.sentence.empty());
  }
  CHECK(files >= 5);
}

}  // namespace
}  // namespace tw
