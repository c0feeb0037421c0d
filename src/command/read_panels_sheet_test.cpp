#include "command/read_panels_sheet.h"

#include <doctest/doctest.h>

#include "base/files.h"
#include "base/scratch_folder.h"
#include "geometry/polygon.h"

namespace tw {
namespace {

/// A stack beside a tall panel, the tall one first in the file; and a spread.
const char* const kTwoPages = R"([
  {"page": "stack", "width": 104, "height": 124, "panels": [{"bbox": [54, 0, 104, 124]},
     {"bbox": [0, 64, 50, 124]}, {"bbox": [0, 0, 50, 60]}]},
  {"page": "wide", "panels": [{"bbox": [1000, 1000, 1500, 1400], "order": 2},
     {"bbox": [1520, 1000, 2000, 1400], "order": 1}]}])";

struct Files {
  ScratchFolder folder;
  std::vector<ReadMarkedPage> pages;

  explicit Files(const std::string& text = kTwoPages) {
    REQUIRE(writeFileAtomically(folder / "list.json", text));
    auto read = readPanels({folder / "list.json", {}, {}});
    REQUIRE(read);
    pages = std::move(*read);
  }
};

TEST_CASE("a bare layout is as large as a usual page and numbered as most readers take it") {
  const Files files;
  const auto stack = layoutPictureOf(files.pages[0]);
  REQUIRE(stack);
  CHECK(stack->picture.sheet.trimHeight == doctest::Approx(260));
  REQUIRE(stack->picture.rough.panels.size() == 3);
  // The stack is read before the tall panel on its right.
  CHECK(bounds(stack->picture.rough.panels[2].outline).min.x > 100);
  CHECK(stack->sheet.facts[1] == "In the file they stand as 3, 2, 1.");
  REQUIRE_FALSE(stack->sheet.partings.empty());
  CHECK(stack->sheet.partings[0].from == 1);
  CHECK(stack->sheet.partings[0].to == 3);

  const auto wide = layoutPictureOf(files.pages[1]);
  REQUIRE(wide);
  CHECK(wide->picture.sheet.trimWidth == doctest::Approx(340));
  CHECK(bounds(wide->picture.rough.panels[0].outline).min.x == doctest::Approx(0));
  CHECK(wide->sheet.facts.back().starts_with("You mean 2, 1; "));
}

TEST_CASE("every page has a file of its own of each kind") {
  const Files files;
  for (const char* kind : {".png", ".svg", ".pdf"}) {
    const std::string name = std::string("sheet") + kind, second = std::string("sheet-2") + kind;
    REQUIRE(drawReadPanels(files.folder / name, files.pages, 40));
    CHECK(std::filesystem::exists(files.folder / name));
    CHECK(std::filesystem::exists(files.folder / second));
  }
  const std::string svg = readFile(files.folder / "sheet.svg").value();
  CHECK(svg.find("rough") == svg.npos);
}

TEST_CASE("an inset lies on its ground") {
  const Files files(R"({"panels": [{"bbox": [0, 0, 100, 150]}, {"bbox": [10, 90, 50, 140]}]})");
  const auto layout = layoutPictureOf(files.pages[0]);
  REQUIRE(layout);
  int grounds = 0;
  for (const RoughPanel& panel : layout->picture.rough.panels) grounds += panel.ground;
  CHECK(grounds == 1);
}

TEST_CASE("a page without size and panels cannot be drawn") {
  const Files files(R"({"panels": []})");
  CHECK_FALSE(drawReadPanels(files.folder / "a.png", files.pages, 40));
}

}  // namespace
}  // namespace tw
