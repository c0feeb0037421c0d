// Follows the stochastic reader of next_panel.cpp along a page. `followed` multiplies the shares
// of the intended steps. The likeliest order is found by depth-first search, best choice first,
// leaving a branch when its product can no longer beat the best whole path; on real pages that
// visits little more than one path. A bound on visited steps keeps odd pages quick; beyond it
// the best path found so far stands.
//
// acrossShare: published end points (preferences.h) joined by a logistic curve, scaled so that the
// ends are exact; the three influences multiply. Cohn & Campbell 2015 found each to lower the
// share step by step; the shapes between are ours.

#include "read/reading_order.h"

#include <algorithm>
#include <numeric>

#include "base/result.h"
#include "read/next_panel.h"
#include "read/preferences.h"

namespace tw {
namespace {

using namespace preference;

constexpr int kMostVisits = 2000;

/// A logistic that runs from exactly 0 at x = from to exactly 1 at x = to, flat outside.
double risingCurve(double x, double from, double to, double middle, double slope) {
  const auto logistic = [&](double v) { return 1 / (1 + std::exp(-slope * (v - middle))); };
  const double low = logistic(from), high = logistic(to);
  return (logistic(std::clamp(x, from, to)) - low) / (high - low);
}

double falling(double rise, double end) {
  return 1 - rise * (1 - end / kAcrossAtGrid);
}

struct LikelyPath {
  const PanelRelations& page;
  std::vector<int> path, best;
  double bestShare = 0;
  int visits = 0;

  void extend(const ReaderState& state, double share) {
    if (!state.unread) {
      best = path;
      bestShare = share;
      return;
    }
    const Choices choices = choicesFrom(state, page);
    for (int i = 0; i < choices.size; ++i) {
      const Choice& choice = choices.list[i];
      const double next = share * choice.share;
      if (next <= bestShare || (++visits > kMostVisits && !best.empty())) return;
      path.push_back(choice.panel + 1);
      extend(after(state, choice.panel, page), next);
      path.pop_back();
    }
  }
};

Ambiguity ambiguityAt(int afterPanel, int intended, double taken, const Choices& choices) {
  Ambiguity step{afterPanel, taken, 0, choices.causeAgainst(intended)};
  for (int i = 0; i < choices.size && !step.rival; ++i) {
    if (choices.list[i].panel != intended) step.rival = choices.list[i].panel + 1;
  }
  return step;
}

PanelSet all(std::size_t count) {
  return count == kMostPanels ? ~PanelSet{0} : (PanelSet{1} << count) - 1;
}

}  // namespace

double acrossShare(double stagger, double gapRatio, double overlap) {
  const double s = risingCurve(stagger, 0, 1, kStaggerMiddle, kStaggerSlope);
  const double g = risingCurve(gapRatio, 1, kGapEnd, kGapMiddle, kGapSlope);
  const double o = risingCurve(overlap, 0, 1, kOverlapMiddle, kOverlapSlope);
  return kAcrossAtGrid * falling(s, kAcrossAtBlockage) * falling(g, kAcrossAtWideGap) *
         falling(o, kAcrossAtOverlap);
}

OrderReading readOrder(const std::vector<Polygon>& panels, ReadingDirection direction,
                       const std::vector<int>& layer) {
  OrderReading result;
  if (panels.empty()) return result;
  if (panels.size() > kMostPanels) {  // no printed page; answer plainly
    result.likely = naiveOrder(panels, direction);
    return result;
  }
  const PanelRelations page(panels, direction, layer);
  const ReaderState start{-1, all(panels.size()), 0, false, 0};
  result.followed = 1;
  ReaderState state = start;
  for (int i = 0; i < page.count; ++i) {
    const Choices choices = choicesFrom(state, page);
    const double taken = choices.shareOf(i);
    result.followed *= taken;
    if (taken < kWorthTelling) result.steps.push_back(ambiguityAt(i, i, taken, choices));
    state = after(state, i, page);
  }
  LikelyPath likely{page, {}, {}, 0, 0};
  likely.path.reserve(panels.size());
  likely.extend(start, 1);
  result.likely = std::move(likely.best);
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
