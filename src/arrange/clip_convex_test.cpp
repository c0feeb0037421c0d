#include "arrange/clip_convex.h"

#include <doctest/doctest.h>
#include <rapidcheck.h>

#include <cmath>

#include "geometry/polygon.h"

namespace tw {
namespace {

TEST_CASE("a square cut by a slanted line keeps the side that the normal looks away from") {
  const Polygon square = polygonOf(Rect{{0, 0}, {10, 10}});
  const Polygon kept = clipped(square, {5, 5}, Vector{1, 1}.unit());
  CHECK(area(kept) == doctest::Approx(50));
  CHECK(contains(kept, {2, 2}));
}

TEST_CASE("cutting by a rectangle is what Clipper says it is") {
  CHECK(rc::check("clip", [] {
    const auto at = [] { return *rc::gen::inRange(-100, 100) / 4.0; };
    const Polygon shape = hull({{at(), at()}, {at(), at()}, {at(), at()}, {at(), at()}});
    RC_PRE(shape.points.size() >= 3);
    const Rect rect{{-10, -8}, {9, 12}};
    const double expected = area(common({shape}, {polygonOf(rect)}));
    const Polygon kept = clipped(shape, rect);
    RC_ASSERT(std::abs((kept.points.size() < 3 ? 0 : area(kept)) - expected) < 0.05);
  }));
}

}  // namespace
}  // namespace tw
