#include "press/grid_art.h"

#include <doctest/doctest.h>

#include <algorithm>

#include "geometry/polygon.h"
#include "press/example_rough.h"
#include "press/recorder.h"

using namespace tw;

namespace {

/// The example page with a grid in its first panel only.
RoughPicture gridded() {
  RoughPicture page = example::rough(0, "A");
  page.grids.clear();
  PerspectiveGrid grid;
  grid.clip = page.rough.panels[0].outline;
  const Rect box = bounds(grid.clip);
  const Point middle = box.centre();
  grid.horizon = RuledLine{{box.min.x, middle.y}, {box.max.x, middle.y}, 1};
  grid.ground = {{{box.min.x, box.max.y}, middle, 0.5}, {{box.max.x, box.max.y}, middle, 0.5}};
  grid.upright = {{middle, {middle.x, box.min.y}, 0.5}};
  grid.vanishing = {{"away", middle}, {"left to right", middle + Vector{-400, 3}}};
  grid.eyeM = 1.55;
  page.grids = {grid};
  return page;
}

Recorder drawn(const RoughPicture& page) {
  const Typesetter typesetter;
  Recorder recorder;
  drawGrids(recorder, page, typesetter);
  return recorder;
}

bool says(const Recorder& recorder, const std::string& words) {
  return std::any_of(recorder.words.begin(), recorder.words.end(), [&](const TypeLine& line) {
    return line.text.find(words) != std::string::npos;
  });
}

}  // namespace

TEST_CASE("a grid has a line for each ruled one and crosses for the vanishing points") {
  const RoughPicture page = gridded();
  const PerspectiveGrid& grid = page.grids[0];
  const Recorder recorder = drawn(page);
  // A cross is two strokes in one path and a ring.
  CHECK(recorder.lines.size() == grid.ground.size() + grid.upright.size() + 1 + 2 * 2);
  CHECK(recorder.depth == 0);
}

TEST_CASE("rulings are in the blue that scanners drop, the measuring wall dashed") {
  const Recorder recorder = drawn(gridded());
  CHECK(recorder.pens[0].ink == kNonPhotoBlue);
  CHECK(recorder.pens[0].dashes.empty());
  CHECK_FALSE(recorder.pens[2].dashes.empty());
}

TEST_CASE("a vanishing point off the panel is told in words for the ruler and one in it is not") {
  const Recorder recorder = drawn(gridded());
  CHECK(says(recorder, "left to right 400 mm left, 3 mm down"));
  CHECK_FALSE(says(recorder, "away"));
  CHECK(says(recorder, "eye 1.55 m up"));
}
