#include "job/axis_side.h"

#include <doctest/doctest.h>

namespace tw {

TEST_CASE("the camera's side of the line changes when it walks through the line") {
  const Place3 a{-1, 0, 0}, b{1, 0, 0};
  CHECK(axisSide(a, b, {0, 1.6, -4}) == 1);  // (2,0,0) × (1,·,−4) = (·, 8, ·)
  CHECK(axisSide(a, b, {0, 1.6, 4}) == -1);
  CHECK(axisSide(a, b, {6, 1.6, 0.1}) == 0);
  CHECK(axisSide(b, a, {0, 1.6, -4}) == -1);
}

}  // namespace tw
