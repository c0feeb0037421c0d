// Follows the stochastic reader of next_panel.cpp along a page. `followed` multiplies the shares
// of the intended steps; the likeliest order is searched in likely_order.cpp.
//
// acrossShare: published end points (preferences.h) joined by a logistic curve, scaled so that the
// ends are exact; the three influences multiply. Cohn & Campbell 2015 found each to lower the
// share step by step; the shapes between are ours.

#include "read/reading_order.h"

#include <algorithm>
#include <numeric>

#include "base/result.h"
#include "read/likely_order.h"
#include "read/next_panel.h"

namespace tw {
namespace {

double falling(double rise, double end, double start) {
  return 1 - rise * (1 - end / start);
}

Ambiguity ambiguityAt(int afterPanel, int intended, double taken, const Choices& choices) {
  Ambiguity step{afterPanel, taken, 0, choices.causeAgainst(intended)};
  for (int i = 0; i < choices.size && !step.rival; ++i) {
    if (choices.list[i].panel != intended) step.rival = choices.list[i].panel + 1;
  }
  return step;
}

}  // namespace

double acrossShare(double stagger, double gapRatio, double overlap,
                   const ReaderPreferences& likes) {
  const double grid = likes.acrossAtGrid;
  return grid * falling(likes.stagger.at(stagger), likes.acrossAtBlockage, grid) *
         falling(likes.gap.at(gapRatio), likes.acrossAtWideGap, grid) *
         falling(likes.overlap.at(overlap), likes.acrossAtOverlap, grid);
}

OrderReading readOrder(const std::vector<Polygon>& panels, ReadingDirection direction,
                       const std::vector<int>& layer, const ReaderPreferences& likes) {
  OrderReading result;
  if (panels.empty()) return result;
  if (panels.size() > kMostPanels) {  // no printed page; answer plainly
    result.likely = naiveOrder(panels, direction);
    return result;
  }
  const PanelRelations page(panels, direction, layer, likes);
  result.followed = 1;
  ReaderState state;
  state.unread = allOf(page.count);
  for (int i = 0; i < page.count; ++i) {
    const Choices choices = choicesFrom(state, page);
    const double taken = choices.shareOf(i);
    result.followed *= taken;
    if (taken < likes.worthTelling) result.steps.push_back(ambiguityAt(i, i, taken, choices));
    state = after(state, i, page);
  }
  for (const int panel : likelyOrder(page).order) result.likely.push_back(panel + 1);
  return result;
}

std::vector<int> naiveOrder(const std::vector<Polygon>& panels, ReadingDirection direction) {
  std::vector<Rect> boxes;
  for (const Polygon& panel : panels) boxes.push_back(readingBox(panel, direction));
  std::vector<int> order(panels.size());
  std::iota(order.begin(), order.end(), 1);
  std::stable_sort(order.begin(), order.end(), [&](int a, int b) {
    const Point p = boxes[a - 1].min, q = boxes[b - 1].min;
    return p.y != q.y ? p.y < q.y : p.x < q.x;
  });
  return order;
}

}  // namespace tw
