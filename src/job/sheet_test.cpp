#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>

#include "base/files.h"
#include "job/document.h"
#include "job/sheet.h"

using namespace tw;

namespace {

constexpr double kInch = 25.4;

Sheet preset(const std::string& name) {
  const auto sheet = loadSheet(name);
  REQUIRE_MESSAGE(sheet, describe(sheet ? Problems{} : sheet.error()));
  return *sheet;
}

bool complainsOf(const Sheet& sheet, const std::string& path, const std::string& words) {
  const Problems found = contradictionsOf(sheet);
  return std::any_of(found.begin(), found.end(), [&](const Problem& problem) {
    return problem.place.path == path && problem.sentence.find(words) != std::string::npos;
  });
}

}  // namespace

TEST_CASE("every sheet that ships loads, is sound, and so is its spread") {
  const auto names = sheetNames();
  CHECK(names.size() >= 10);
  for (const std::string& name : names) {
    CAPTURE(name);
    const Sheet single = preset(name);
    CHECK(single.name == name);
    CHECK_FALSE(single.source.empty());
    CHECK(contradictionsOf(single).empty());
    const Sheet spread = preset(name + "-spread");
    CHECK(spread.spread);
    CHECK_MESSAGE(contradictionsOf(spread).empty(), describe(contradictionsOf(spread)));
  }
}

// Printers' published sheets for US comic books, in inches; ISO 216 and JIS P 0138 for the rest.
TEST_CASE("trims and bleed pages are those of the published sheets") {
  const auto check = [](const char* name, double width, double height, double bleedWidth,
                        double bleedHeight) {
    CAPTURE(name);
    const Sheet sheet = preset(name);
    CHECK(sheet.trimWidth == doctest::Approx(width).epsilon(1e-6));
    CHECK(sheet.trimHeight == doctest::Approx(height).epsilon(1e-6));
    CHECK(sheet.bleedRect().width() == doctest::Approx(bleedWidth).epsilon(1e-6));
    CHECK(sheet.bleedRect().height() == doctest::Approx(bleedHeight).epsilon(1e-6));
  };
  check("us-comic-a", 168.275, 260.35, 174.625, 266.7);
  check("us-comic-b", 168.275, 258.7625, 174.625, 10.4375 * kInch);
  check("us-comic-c", 168.275, 257.175, 177.8, 266.7);
  check("us-comic-d", 170.18, 259.08, 176.53, 265.43);
  check("digest", 139.7, 215.9, 5.75 * kInch, 8.75 * kInch);
  check("album", 240, 320, 246, 326);
  check("a4", 210, 297, 216, 303);
  check("a5", 148, 210, 154, 216);
  check("b5-jis", 182, 257, 188, 263);
  check("tankobon", 128, 182, 134, 188);
}

TEST_CASE("the US live area is 6 x 9 in and its board 10 x 15 in at 60 percent") {
  const Sheet sheet = preset("us-comic-a");
  CHECK(sheet.liveRect(true).width() == doctest::Approx(6 * kInch).epsilon(1e-5));
  CHECK(sheet.liveRect(true).height() == doctest::Approx(9 * kInch).epsilon(1e-5));
  CHECK(sheet.boardWidth == doctest::Approx(10 * kInch).epsilon(1e-5));
  CHECK(sheet.boardHeight == doctest::Approx(15 * kInch).epsilon(1e-5));
  CHECK(sheet.reduction == 0.6);
}

TEST_CASE("the binding margin changes sides between left and right pages") {
  const Sheet digest = preset("digest");
  CHECK(digest.liveRect(true).min.x == doctest::Approx(10));
  CHECK(digest.liveRect(false).min.x == doctest::Approx(5));
  CHECK(digest.liveRect(false).max.x == doctest::Approx(digest.trimWidth - 10));
}

// Identity behind printers' spread rules: 2 × trim + 2 × bleed, the inner bleeds vanish. One
// printer's 13.625 in is 2 × 6.625 + 2 × 0.1875.
TEST_CASE("a spread is two trims and two bleeds wide") {
  const Sheet spread = spreadOf(preset("us-comic-c"));
  CHECK(spread.bleedRect().width() == doctest::Approx(13.625 * kInch).epsilon(1e-6));
  CHECK(spread.trimHeight == preset("us-comic-c").trimHeight);
}

TEST_CASE("a spread keeps a margin on both sides of its fold") {
  const Sheet single = preset("digest");
  const Sheet spread = spreadOf(single);
  CHECK(spread.foldRect().width() == doctest::Approx(2 * single.live.inner));
  CHECK(spread.foldRect().centre().x == doctest::Approx(single.trimWidth));
  CHECK(spread.liveRect(true).min.x == doctest::Approx(single.live.outer));
  CHECK(single.foldRect().width() == 0);
}

TEST_CASE("contradictions are named with the field") {
  Sheet sheet = preset("us-comic-a");
  SUBCASE("live outside the trim") {
    sheet.live.outer = -2;
    CHECK(complainsOf(sheet, "/live", "outside the trim"));
    CHECK(complainsOf(sheet, "/live/outer", "negative"));
  }
  SUBCASE("no live area left") {
    sheet.live.top = sheet.live.bottom = 140;
    CHECK(complainsOf(sheet, "/live", "no live area"));
  }
  SUBCASE("bleed absurd") {
    sheet.bleed = 125;
    CHECK(complainsOf(sheet, "/bleed", "more than 30 mm"));
  }
  SUBCASE("trim in inches") {
    sheet.trimWidth = 6.625;
    CHECK(complainsOf(sheet, "/trim_width", "6.625 mm was found"));
  }
  SUBCASE("negative gutter") {
    sheet.gutterDown = -1;
    CHECK(complainsOf(sheet, "/gutter_down", "negative"));
  }
  SUBCASE("reduction as a percentage") {
    sheet.reduction = 60;
    CHECK(complainsOf(sheet, "/reduction", "between 0 and 4"));
  }
}

// The whole 11 × 17 in sheet against the 6.875 × 10.4375 in bleed page: 0.625 across and 0.614
// down, computed.
TEST_CASE("a whole 11 x 17 board is refused because it does not reduce evenly") {
  Sheet sheet = preset("us-comic-b");
  sheet.boardWidth = 11 * kInch;
  sheet.boardHeight = 17 * kInch;
  sheet.reduction = 0.625;
  CHECK(complainsOf(sheet, "/reduction", "0.6250 across and 0.6140 down"));
}

TEST_CASE("a spread that counts the bleeds at the fold is refused") {
  Sheet spread = preset("us-comic-a-spread");
  spread.trimWidth += 2 * spread.bleed;
  CHECK(complainsOf(spread, "/trim_width", "336.550 mm wide"));
}

// A published guide gives 188 × 263 mm at 600 dpi as 4440 × 6307 px; 6307 px are 267 mm.
TEST_CASE("a canvas that does not fit trim and bleed is refused") {
  Sheet sheet = preset("b5-jis");
  sheet.canvas = {600, 4440, 6307};
  CHECK(complainsOf(sheet, "/canvas/height", "267.0 mm"));
  CHECK_FALSE(complainsOf(sheet, "/canvas/width", "px"));
}

TEST_CASE("a sheet nobody knows is refused with the names that are known") {
  const auto sheet = loadSheet("us-comik-a");
  REQUIRE_FALSE(sheet);
  CHECK(sheet.error()[0].advice.find("Is \"us-comic-a\" meant?") != std::string::npos);
  CHECK(sheet.error()[0].advice.find("tankobon") != std::string::npos);
  CHECK_FALSE(loadSheet("-spread"));
  CHECK_FALSE(loadSheet("../presets/sheets/a4"));
}

TEST_CASE("a sheet in a file of the artist's own loads by its path") {
  const std::string path = std::string(TIERWRIGHT_SOURCE_DIR) + "/presets/sheets/a4.json";
  const auto sheet = loadSheet(path);
  REQUIRE(sheet);
  CHECK(*sheet == preset("a4"));
}

TEST_CASE("loading a sheet reports every contradiction at once") {
  Sheet sheet = preset("a4");
  sheet.bleed = -3;
  sheet.live.top = -1;
  sheet.reduction = 0;
  const auto read = readSheetText(writeSheetText(sheet), "mine.json");
  REQUIRE_FALSE(read);
  CHECK(read.error().size() >= 3);
  for (const Problem& problem : read.error()) CHECK(problem.place.file == "mine.json");
}

TEST_CASE("margins, gutters, least panels and boards that leave no page are named") {
  const auto with = [](auto change) {
    Sheet sheet = preset("us-comic-a");
    change(sheet);
    return sheet;
  };
  CHECK(complainsOf(with([](Sheet& s) { s.leastPanelWidth = 200; }), "/least_panel_width",
                    "does not fit the live area"));
  CHECK(
      complainsOf(with([](Sheet& s) { s.gutterDown = 150; }), "/gutter_across", "wider than half"));
  CHECK(complainsOf(with([](Sheet& s) { s.boardHolds = "all"; }), "/board_holds", "\"all\""));
  CHECK(complainsOf(with([](Sheet& s) { s.boardHeight = 0; }), "/board_width", "Only one side"));
  CHECK(complainsOf(with([](Sheet& s) { s.pageWidth = 100; }), "/trim_width", "by page_width"));
}

TEST_CASE("a spread cannot be doubled again") {
  const auto twice = loadSheet("us-comic-a-spread-spread");
  REQUIRE_FALSE(twice);
  CHECK(twice.error()[0].cause == Cause::BadInput);
}
