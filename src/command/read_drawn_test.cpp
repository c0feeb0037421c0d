#include "command/read_drawn.h"

#include <doctest/doctest.h>

#include "../../tests/json_schema_check.h"
#include "base/files.h"
#include "base/scratch_folder.h"
#include "geometry/polygon.h"
#include "press/png_surface.h"
#include "press/typesetter.h"

namespace tw {
namespace {

/// A page of two panels with a dark blot in each, drawn by our own surface.
std::string pagePng() {
  const Typesetter typesetter;
  PngSurface surface(typesetter, {{0, 0}, {100, 150}}, 100);
  for (const double top : {10.0, 80.0}) {
    surface.fill(Path(Rect{{10, top}, {90, top + 60}}), greyOf(0.2), FillRule::NonZero);
    surface.fill(Path(ellipse({30, top + 30}, 10, 16)), kBlack, FillRule::NonZero);
    surface.fill(Path(ellipse({70, top + 15}, 6, 6)), greyOf(0.5), FillRule::NonZero);
  }
  return *surface.finished();
}

const char* const kList = R"([{"page": "7", "width": 100, "height": 150, "picture": "page.png",
  "panels": [{"bbox": [10, 10, 90, 70]},
             {"bbox": [10, 80, 90, 140], "focus": [70, 95], "lead": [0, 1]}]}])";

struct Files {
  ScratchFolder folder;
  std::filesystem::path list = folder / "pages.json";

  explicit Files(const std::string& text = kList) {
    REQUIRE(writeFileAtomically(list, text));
    REQUIRE(writeFileAtomically(folder / "page.png", pagePng()));
  }
};

TEST_CASE("a page that names its picture is measured as a picture") {
  const Files files;
  const auto pages = readPanels({files.list, {}, {}});
  REQUIRE(pages);
  REQUIRE(pages->front().drawn);
  const DrawnPage& drawn = *pages->front().drawn;
  CHECK(Rect{{18, 22}, {42, 58}}.contains(drawn.scale.inFile(drawn.panels[0].focus.at)));
  CHECK(drawn.panels[0].squint.rank == 1);
  CHECK(drawn.panels[1].focus.marked);
  CHECK(drawn.panels[1].squint.rank == 2);
  const auto said = drawnSentences(drawn);
  REQUIRE(said.size() >= 3);
  CHECK(said[0].starts_with("Panel 1: focus proposed"));
  CHECK(said[1].find("as marked at the upper right; small and blurred the strongest place") !=
        std::string::npos);
}

TEST_CASE("its printed JSON follows the published schema") {
  const Files files;
  const auto pages = readPanels({files.list, {}, {}});
  REQUIRE(pages);
  const auto schema =
      readFile(TIERWRIGHT_SOURCE_DIR "/docs/formats/read-panels-output.schema.json");
  REQUIRE(schema);
  tests::SchemaCheck check(nlohmann::json::parse(*schema));
  const nlohmann::json printed = nlohmann::json::parse(readPanelsJson(*pages));
  for (const std::string& finding : check.findings(printed)) FAIL_CHECK(finding);
  CHECK(printed[0]["attention"].size() == 2);
  CHECK(printed[0]["attention"][1]["lead"]["direction"] == nlohmann::json({0, 1}));
  CHECK(printed[0]["squint"][1]["rank"] == 2);
  CHECK(printed[0]["picture"]["panels"].size() == 2);
}

TEST_CASE("the picture may be given beside a list of one page and not beside one of two") {
  const char* const bare = R"({"panels": [{"bbox": [40, 40, 350, 270]}]})";
  const Files files(bare);
  const auto pages = readPanels({files.list, {}, files.folder / "page.png"});
  REQUIRE(pages);
  CHECK(pages->front().drawn.has_value());
  const Files two(std::string("[") + bare + "," + bare + "]");
  const auto refused = readPanels({two.list, {}, two.folder / "page.png"});
  REQUIRE_FALSE(refused);
  CHECK(refused.error().front().sentence == "One picture was given for a list of several pages.");
}

TEST_CASE("a picture that is missing or of another shape leaves the panels read and is told") {
  const Files other(R"([{"width": 100, "height": 100, "picture": "page.png",
                         "panels": [{"bbox": [0, 0, 9, 9]}]}])");
  const auto shape = readPanels({other.list, {}, {}});
  REQUIRE(shape);
  CHECK_FALSE(shape->front().drawn);
  CHECK(shape->front().pictureProblem.find("other proportions") != std::string::npos);
  CHECK(readPanelsJson(*shape).find("\"picture_problem\"") != std::string::npos);
  const Files gone(R"([{"picture": "no.png", "panels": [{"bbox": [0, 0, 9, 9]}]}])");
  const auto missing = readPanels({gone.list, {}, {}});
  REQUIRE(missing);
  CHECK(readPanelsSentences(missing->front()).back().starts_with("Only its panels were read: "));
}

TEST_CASE("a picture of nearly the page's shape is measured and doubted") {
  const Files files(R"([{"width": 104, "height": 150, "picture": "page.png",
                         "panels": [{"bbox": [10, 10, 90, 70]}]}])");
  const auto pages = readPanels({files.list, {}, {}});
  REQUIRE(pages);
  REQUIRE(pages->front().drawn);
  CHECK(pages->front().pictureNote.starts_with("For its height the picture is 4 % narrower"));
  CHECK(readPanelsJson(*pages).find("\"picture_note\"") != std::string::npos);
  const Files same;
  CHECK(readPanels({same.list, {}, {}})->front().pictureNote.empty());
}

TEST_CASE("a picture that was asked for and cannot be read is refused") {
  const Files files(R"({"panels": [{"bbox": [0, 0, 9, 9]}]})");
  CHECK_FALSE(readPanels({files.list, {}, files.folder / "no.png"}));
}

TEST_CASE("the heat map is written as a PNG") {
  const Files files;
  const auto pages = readPanels({files.list, {}, {}});
  REQUIRE(pages);
  REQUIRE(drawAttentionPng(files.folder / "eye.png", pages->front()));
  const auto bytes = readFile(files.folder / "eye.png");
  REQUIRE(bytes);
  CHECK(bytes->starts_with("\x89PNG"));
}

}  // namespace
}  // namespace tw
