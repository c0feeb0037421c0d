// The likeliest whole order is the path with the greatest product of shares. Depth first, best
// choice first, leaving a branch when its product can no longer beat the best whole path; on
// real pages that visits little more than one path, which matters because the search for a
// layout asks this very often. Pages on which that takes more than kMostVisits (heaps of dozens of
// panels) keep the best path found until then.

#include "read/likely_order.h"

#include "read/next_panel.h"

namespace tw {

namespace {

constexpr int kMostVisits = 2000;

struct LikelyPath {
  const PanelRelations& page;
  std::vector<int> path, best;
  double bestShare = 0;
  int visits = 0;

  bool go(const ReaderState& state, int panel, double share) {
    if (share <= bestShare || (++visits > kMostVisits && !best.empty())) return false;
    path.push_back(panel);
    extend(after(state, panel, page), share);
    path.pop_back();
    return true;
  }

  void extend(const ReaderState& state, double share) {
    if (!state.unread) {
      best = path;
      bestShare = share;
      return;
    }
    const Choices choices = choicesFrom(state, page);
    for (int i = 0; i < choices.size; ++i)
      if (!go(state, choices.list[i].panel, share * choices.list[i].share)) return;
    for (int panel = 0; panel < page.count; ++panel)
      if (choices.others & only(panel))
        if (!go(state, panel, share * choices.shareOfEachOther())) return;
  }
};

}  // namespace

LikelyOrder likelyOrder(const PanelRelations& page) {
  LikelyPath likely{page, {}, {}, 0, 0};
  likely.path.reserve(page.boxes.size());
  ReaderState start;
  start.unread = allOf(page.count);
  likely.extend(start, 1);
  return {std::move(likely.best), likely.bestShare};
}

}  // namespace tw
