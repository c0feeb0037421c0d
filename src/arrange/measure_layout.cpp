#include "arrange/measure_layout.h"

#include <algorithm>

#include "arrange/treatments.h"
#include "geometry/polygon.h"

namespace tw {

namespace {

/// A size that falls short by less than rounding is kept.
constexpr double kRounding = 1e-6;

/// Area of a convex outline inside a rectangle.
double areaWithin(const Polygon& outline, const Rect& rect) {
  const Rect box = bounds(outline);
  if (rect.contains(box.min) && rect.contains(box.max)) return area(outline);
  if (outline.points.size() == 4 && std::abs(area(outline) - box.area()) < 1e-9 * box.area()) {
    const double w = std::min(box.max.x, rect.max.x) - std::max(box.min.x, rect.min.x);
    const double h = std::min(box.max.y, rect.max.y) - std::max(box.min.y, rect.min.y);
    return std::max(0.0, w) * std::max(0.0, h);
  }
  return area(common({outline}, {polygonOf(rect)}));
}

double shortBy(double have, double want) {
  return want > 0 && have < want * (1 - kRounding) ? 1 - have / want : 0;
}

}  // namespace

double dominantShareOf(const Layout& layout, std::size_t dominant, const Rect& trim) {
  double own = 0, others = 0;
  for (std::size_t i = 0; i < layout.panels.size(); ++i)
    (i == dominant ? own : others) += areaWithin(layout.panels[i].outline, trim);
  if (layout.panels[dominant].ground) own -= others;
  return own / (own + others);
}

void measureShapes(const ArrangeRequest& request, Layout& layout) {
  const std::vector<PanelWish> wishes = wishesOn(request);
  layout.shortfall = 0;
  for (std::size_t i = 0; i < layout.panels.size(); ++i) {
    const Rect box = bounds(layout.panels[i].outline);
    layout.shortfall = std::max({layout.shortfall, shortBy(box.width(), wishes[i].leastWidth),
                                 shortBy(box.height(), wishes[i].leastHeight)});
  }
  layout.dominantShare = 0;
  if (!request.dominant) return;
  layout.dominantShare = dominantShareOf(layout, *request.dominant, request.sheet.trimRect());
  layout.shortfall =
      std::max(layout.shortfall, shortBy(layout.dominantShare, request.leastDominantShare));
}

}  // namespace tw
