// The rules about the shapes of the page: areas, aspects, least sizes, dominant share.
#include <algorithm>

#include "geometry/polygon.h"
#include "review/score_card.h"

namespace tw {

LayoutCosts layoutCosts(const Layout& layout, const PageCase& page, const RuleBook& book) {
  const std::size_t n = layout.panels.size();
  double sum = 0;
  std::vector<double> areas(n);
  for (std::size_t i = 0; i < n; ++i) {
    areas[i] = area(layout.panels[i].outline);
    if (!layout.panels[i].ground) sum += areas[i];
  }
  // Of a panel under the others only what they leave free counts.
  if (layout.treatment == Treatment::Ground) sum /= std::max(0.05, 1 - layout.dominantShare);
  double off = 0, shape = 0;
  for (std::size_t i = 0; i < n; ++i) {
    const PanelCase& wish = page.panels[i];
    // A panel under the others has no size of its own to speak of.
    if (layout.panels[i].ground) continue;
    const Rect box = bounds(layout.panels[i].outline);
    off += cost::areaFollowsWeight(areas[i] / sum, wish.weightShare);
    shape += cost::panelShape(box.width() / box.height(), wish.aspectWish);
  }
  LayoutCosts out;
  out.area = book.weight(RuleId::AreaFollowsWeight) * off / static_cast<double>(n);
  out.shape = book.weight(RuleId::PanelShape) * shape / static_cast<double>(n);
  out.least = book.weight(RuleId::LeastSize) * layout.shortfall;
  out.dominant = book.weight(RuleId::DominantShare) *
                 cost::shortfall(layout.dominantShare, page.brief.leastDominantShare);
  return out;
}

}  // namespace tw
