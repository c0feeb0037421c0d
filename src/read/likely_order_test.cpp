#include "read/likely_order.h"

#include <doctest/doctest.h>

#include "geometry/polygon.h"

namespace tw {
namespace {

Polygon box(double x, double y, double w, double h) {
  return polygonOf(Rect{{x, y}, {x + w, y + h}});
}

LikelyOrder orderOf(const std::vector<Polygon>& panels) {
  return likelyOrder(
      PanelRelations(panels, ReadingDirection::LeftToRight, {}, shippedPreferences()));
}

TEST_CASE("rows of a grid are the likeliest order and its share is a share") {
  const LikelyOrder likely =
      orderOf({box(0, 0, 50, 60), box(54, 0, 50, 60), box(0, 64, 50, 60), box(54, 64, 50, 60)});
  CHECK(likely.order == std::vector<int>{0, 1, 2, 3});
  CHECK(likely.share > 0.9);
  CHECK(likely.share < 1);
}

TEST_CASE("the likeliest whole order may begin with a move that is not the likeliest") {
  // Entry without a corner panel: the split at the start and what follows count together.
  const LikelyOrder likely = orderOf({box(40, 0, 60, 50), box(0, 54, 60, 50), box(64, 54, 60, 50)});
  CHECK(likely.order.size() == 3);
  CHECK(likely.share > 0.5);
}

TEST_CASE("many panels in a heap still give every panel once") {
  std::vector<Polygon> panels;
  for (int i = 0; i < 40; ++i)
    panels.push_back(box((i * 37) % 101, (i * 53) % 151, 9 + (i * 7) % 13, 8 + (i * 11) % 17));
  const LikelyOrder likely = orderOf(panels);
  PanelSet seen = 0;
  for (const int panel : likely.order) seen |= only(panel);
  CHECK(likely.order.size() == 40);
  CHECK(seen == allOf(40));
}

}  // namespace
}  // namespace tw
