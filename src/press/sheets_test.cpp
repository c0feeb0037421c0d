// The sheets that settle a page's dominant picture: fit and variants, read back as SVG.
#include <doctest/doctest.h>

#include <string>

#include "base/files.h"
#include "base/scratch_folder.h"
#include "geometry/polygon.h"
#include "press/fit_art.h"
#include "press/variant_sheet.h"

using namespace tw;

namespace {

Drawing oneLine(Point from, Point to) {
  Drawing drawing;
  drawing.clip = {polygonOf(Rect{{0, 0}, {200, 300}})};
  drawing.strokes = {{{from, between(from, to, 0.5), to}, {0.5, 0.5, 0.5}, 1}};
  return drawing;
}

std::size_t timesIn(const std::string& text, const std::string& part) {
  std::size_t count = 0;
  for (std::size_t at = text.find(part); at != std::string::npos; at = text.find(part, at + 1))
    ++count;
  return count;
}

VariantSheet variants(std::size_t count) {
  VariantSheet sheet{"Ines hauls: what else", "page 4", "In brackets: the change.", {}, {}};
  sheet.outline = polygonOf(Rect{{20, 40}, {140, 120}});
  for (std::size_t i = 0; i < count; ++i)
    sheet.cells.push_back({i == 0 ? "" : std::to_string(i),
                           "variant named " + std::to_string(i),
                           {"reads 61", "balance +4 cm"},
                           oneLine({30, 50}, {120, 110})});
  return sheet;
}

std::string svgOf(const VariantSheet& sheet) {
  const ScratchFolder folder;
  const auto file = folder / "sheet.svg";
  REQUIRE(writeVariantSheet(file, sheet).has_value());
  return readFile(file).value();
}

/// A page of two panels; the figure in the lower one, a column as asked.
FitPicture fitOf(FitColumn column) {
  FitPicture picture;
  picture.title = "How large can Ines be?";
  picture.panels = {polygonOf(Rect{{10, 10}, {160, 120}}), polygonOf(Rect{{10, 125}, {160, 240}})};
  picture.own = 1;
  column.heading = "A heading";
  column.number = "head 21.5 mm";
  column.sentence = "A sentence under it.";
  picture.columns = {std::move(column)};
  return picture;
}

std::string svgOf(const FitPicture& picture) {
  const ScratchFolder folder;
  const auto file = folder / "fit.svg";
  REQUIRE(writeFitSvg(file, picture).has_value());
  return readFile(file).value();
}

FitColumn standing() {
  FitColumn column;
  column.placed = true;
  column.silhouette = {polygonOf(Rect{{50, 100}, {90, 260}})};
  column.drawing = oneLine({60, 110}, {80, 230});
  return column;
}

}  // namespace

TEST_CASE("a sheet of variants is larger for more of them and the same for the same") {
  const std::string nine = svgOf(variants(9));
  CHECK(nine == svgOf(variants(9)));
  CHECK(nine.size() > svgOf(variants(3)).size());
  CHECK(svgOf(variants(1)).size() > 500);
}

TEST_CASE("a sheet of variants is refused a file that is neither PNG nor SVG") {
  const ScratchFolder folder;
  CHECK_FALSE(writeVariantSheet(folder / "sheet.txt", variants(2)).has_value());
}

TEST_CASE("a sheet of variants can be read back as a PNG") {
  const ScratchFolder folder;
  REQUIRE(writeVariantSheet(folder / "sheet.png", variants(5)).has_value());
  const auto bytes = readFile(folder / "sheet.png");
  REQUIRE(bytes.has_value());
  CHECK(bytes->substr(1, 3) == "PNG");
}

TEST_CASE("only a figure that is cut has its lost part dashed") {
  const std::string whole = svgOf(fitOf(standing()));
  FitColumn cut = standing();
  cut.shownIn = {polygonOf(Rect{{10, 125}, {160, 240}})};
  const std::string dashed = svgOf(fitOf(cut));
  CHECK(timesIn(whole, "dasharray") == 0);
  CHECK(timesIn(dashed, "dasharray") == 1);
}

TEST_CASE("what stands above its border is not crossed by the border") {
  FitColumn cut = standing();
  cut.shownIn = {polygonOf(Rect{{10, 125}, {160, 240}})};
  FitColumn over = cut;
  over.above = over.silhouette;
  CHECK(timesIn(svgOf(fitOf(over)), "clip-path=") >= timesIn(svgOf(fitOf(cut)), "clip-path="));
  CHECK(svgOf(fitOf(over)) != svgOf(fitOf(cut)));
}

TEST_CASE("an answer that does not exist shows its page and words without a figure") {
  FitColumn none;
  const std::string empty = svgOf(fitOf(none)), placed = svgOf(fitOf(standing()));
  CHECK(empty.size() < placed.size());
  CHECK(empty.size() > 500);
}
