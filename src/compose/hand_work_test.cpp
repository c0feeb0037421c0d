#include "compose/hand_work.h"

#include <doctest/doctest.h>

namespace tw {

TEST_CASE("lines and balloons of the artist's own are told and a bare rough is not") {
  Rough bare;
  bare.panels.resize(2);
  bare.panels[1].balloons.resize(1);
  CHECK_FALSE(hasHandWork(bare));
  Rough drawn = bare, placed = bare;
  drawn.panels[0].strokes.push_back({{{1, 1}, {2, 2}}, {1, 1}, false});
  placed.panels[1].balloons[0].byHand = true;
  for (const Rough& own : {drawn, placed}) CHECK(hasHandWork(own));
}

}  // namespace tw
