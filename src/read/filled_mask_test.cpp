#include "read/filled_mask.h"

#include <doctest/doctest.h>

#include <algorithm>

#include "read/drawn_picture_test.h"

namespace tw {

namespace {

int covered(const std::vector<std::uint8_t>& mask) {
  return static_cast<int>(std::count(mask.begin(), mask.end(), 255));
}

}  // namespace

TEST_CASE("a region covers its own pixels and a hole in it none") {
  GreyPicture grid = paper(100, 80);
  grid.origin = {-10, 5};
  grid.mmPerPx = 0.5;
  const Polygon outer = polygonOf(Rect{{0, 10}, {30, 40}}),
                hole = polygonOf(Rect{{10, 20}, {20, 30}});
  const auto full = filledMask({outer}, grid), ring = filledMask({outer, hole}, grid);
  CHECK(covered(full) == doctest::Approx(60 * 60).epsilon(0.05));
  CHECK(covered(full) - covered(ring) == doctest::Approx(20 * 20).epsilon(0.12));
  CHECK(full[(30) * 100 + 50] == 255);
  CHECK(ring[(40) * 100 + 50] == 0);
}

TEST_CASE("corners far off the grid and lines without area do no harm") {
  const GreyPicture grid = paper(20, 20);
  CHECK(covered(filledMask({polygonOf(Rect{{-1e12, -1e12}, {1e12, 1e12}})}, grid)) == 400);
  CHECK(covered(filledMask({Polygon{{{1, 1}, {5, 5}}}}, grid)) == 0);
  CHECK(covered(filledMask({}, grid)) == 0);
}

}  // namespace tw
