#include "stage/trace_region.h"

#include <doctest/doctest.h>

#include "geometry/polygon.h"

namespace tw {

TEST_CASE("a traced mask has the area of its pixels, holes taken out") {
  const int n = 40;
  std::vector<std::uint8_t> mask(n * n, 0);
  for (int y = 5; y < 30; ++y) {
    for (int x = 8; x < 33; ++x) mask[static_cast<std::size_t>(y * n + x)] = 1;
  }
  for (int y = 12; y < 20; ++y) {
    for (int x = 15; x < 25; ++x) mask[static_cast<std::size_t>(y * n + x)] = 0;
  }
  const Region region = traced(mask, n, n);
  CHECK(region.size() == 2);
  CHECK(area(region) == doctest::Approx(25 * 25 - 8 * 10));
  CHECK(contains(region, Point{10, 10}));
  CHECK(!contains(region, Point{20, 15}));
}

TEST_CASE("pixels that touch only at a corner give two outlines, specks none") {
  std::vector<std::uint8_t> mask(100, 0);
  for (const int i : {0, 1, 2, 10, 11, 12, 20, 21, 22, 33, 34, 35, 43, 44, 45, 53, 54, 55, 99}) {
    mask[static_cast<std::size_t>(i)] = 1;
  }
  CHECK(traced(mask, 10, 10, 4).size() == 2);
}

TEST_CASE("a mask that reaches the picture's border is closed along it") {
  const std::vector<std::uint8_t> mask(12 * 9, 1);
  const Region region = traced(mask, 12, 9);
  REQUIRE(region.size() == 1);
  CHECK(area(region) == doctest::Approx(108));
}

}  // namespace tw
