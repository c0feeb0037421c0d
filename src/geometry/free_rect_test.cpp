#include "geometry/free_rect.h"

#include <doctest/doctest.h>
#include <rapidcheck.h>

namespace tw {

TEST_CASE("with nothing taken the whole space is free") {
  CHECK(largestFreeRect({{0, 0}, {3, 2}}, {}) == Rect{{0, 0}, {3, 2}});
}

TEST_CASE("a band across the middle leaves the larger side") {
  CHECK(largestFreeRect({{0, 0}, {10, 10}}, {{{0, 3}, {10, 5}}}) == Rect{{0, 5}, {10, 10}});
}

// Outside judge: counting cells of a small grid.
TEST_CASE("no grid-aligned free rectangle is larger") {
  CHECK(rc::check("brute force on a 6 × 6 grid", [] {
    std::vector<Rect> taken;
    for (int i = *rc::gen::inRange(0, 5); i > 0; --i) {
      const double x = *rc::gen::inRange(0, 5), y = *rc::gen::inRange(0, 5);
      taken.push_back({{x, y}, {x + *rc::gen::inRange(1, 3), y + *rc::gen::inRange(1, 3)}});
    }
    const auto isTaken = [&](int x, int y) {
      for (const Rect& r : taken)
        if (r.contains({x + 0.5, y + 0.5})) return true;
      return false;
    };
    int most = 0;
    for (int x0 = 0; x0 < 6; ++x0)
      for (int y0 = 0; y0 < 6; ++y0)
        for (int x1 = x0; x1 < 6; ++x1)
          for (int y1 = y0; y1 < 6; ++y1) {
            bool free = true;
            for (int x = x0; x <= x1; ++x)
              for (int y = y0; y <= y1; ++y) free = free && !isTaken(x, y);
            if (free) most = std::max(most, (x1 - x0 + 1) * (y1 - y0 + 1));
          }
    RC_ASSERT(largestFreeRect({{0, 0}, {6, 6}}, taken).area() == most);
  }));
}

TEST_CASE("a space taken whole leaves an empty rectangle") {
  CHECK(largestFreeRect({{0, 0}, {10, 10}}, {{{-1, -1}, {11, 11}}}).area() == 0);
}

}  // namespace tw
