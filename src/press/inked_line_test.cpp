#include "press/inked_line.h"

#include <doctest/doctest.h>

#include <algorithm>

#include "press/example_rough.h"
#include "press/recorder.h"

using namespace tw;

namespace {

double distanceTo(const std::vector<Point>& line, Point p) {
  double least = 1e9;
  for (std::size_t i = 0; i + 1 < line.size(); ++i) {
    const Vector chord = line[i + 1] - line[i];
    const double square = dot(chord, chord);
    const double share = square > 0 ? std::clamp(dot(p - line[i], chord) / square, 0.0, 1.0) : 0;
    least = std::min(least, (p - between(line[i], line[i + 1], share)).length());
  }
  return least;
}

}  // namespace

TEST_CASE("thinning keeps every point of the pen line within the tolerance") {
  Random random(5);
  for (int round = 0; round < 50; ++round) {
    const Stroke whole =
        example::arc({50, 50}, 5 + 40 * random.uniform(), 20, 0, 6 * random.uniform(), 0.4);
    for (const double tolerance : {0.01, 0.02, 0.5}) {
      const Stroke few = thinned(whole, tolerance);
      CHECK(few.points.size() <= whole.points.size());
      if (tolerance == 0.5) CHECK(few.points.size() < whole.points.size());
      CHECK(few.points.front() == whole.points.front());
      CHECK(few.points.back() == whole.points.back());
      for (const Point p : whole.points) CHECK(distanceTo(few.points, p) <= tolerance + 1e-9);
    }
  }
}

TEST_CASE("thinning keeps a swelling of the pen on a straight line") {
  Stroke stroke{{{0, 0}, {10, 0}, {20, 0}}, {0.1, 0.9, 0.1}, 1};
  CHECK(thinned(stroke, 0.02).points.size() == 3);
  stroke.widths = {0.1, 0.3, 0.5};
  CHECK(thinned(stroke, 0.02).points.size() == 2);
}

TEST_CASE("neighbouring strokes of one darkness are one fill, in painting order") {
  Drawing drawing;
  for (const double darkness : {1.0, 1.0, 0.4, 1.0})
    drawing.strokes.push_back(example::penLine({{0, 0}, {5, 5}}, 0.3, darkness));
  Recorder recorder;
  drawPicture(recorder, drawing, 0.02);
  CHECK(recorder.fills.size() == 3);
}
