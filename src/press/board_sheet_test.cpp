#include "press/board_sheet.h"

#include <doctest/doctest.h>

#include "base/files.h"
#include "base/scratch_folder.h"
#include "geometry/polygon.h"
#include "press/blue_surface.h"
#include "press/example_rough.h"
#include "press/recorder.h"
#include "press/stroke_ink.h"

namespace tw {

TEST_CASE("board sheet: the page is as much larger as the original is than the print") {
  RoughPicture picture = example::rough(0, "A");
  picture.sheet.reduction = 0.5;
  const ScratchFolder scratch;
  REQUIRE(writeBoard(scratch / "board.svg", picture, {}).has_value());
  const auto svg = readFile(scratch / "board.svg");
  REQUIRE(svg.has_value());
  const double wide = (picture.sheet.bleedRect().width() + 2 * 6.35) / 0.5;
  const std::size_t at = svg->find("width=\"");
  REQUIRE(at != std::string::npos);
  CHECK(std::stod(svg->substr(at + 7)) == doctest::Approx(wide).epsilon(0.001));
}

TEST_CASE("blue surface: black becomes non-photo blue and paper stays paper") {
  Recorder recorder;
  BlueSurface blue(recorder);
  blue.line(Path(Rect{{0, 0}, {1, 1}}), {.ink = kBlack});
  blue.line(Path(Rect{{0, 0}, {1, 1}}), {.ink = kPaper});
  REQUIRE(recorder.pens.size() == 2);
  CHECK(recorder.pens[0].ink == kNonPhotoBlue);
  CHECK(recorder.pens[1].ink.red == doctest::Approx(1));
}

TEST_CASE("stroke ink: a stroke that a file gives too few widths keeps its last one") {
  const PenStroke stroke{{{0, 0}, {10, 0}, {20, 0}}, {2}, true};
  const Polygon outline = outlineOf(stroke);
  REQUIRE(outline.points.size() > 6);
  CHECK(bounds(outline).height() == doctest::Approx(2).epsilon(0.02));
}

}  // namespace tw
