#include "read/panel_relations.h"

#include <algorithm>
#include <limits>

#include "geometry/polygon.h"
#include "read/preferences.h"

namespace tw {
namespace {

double shared(double aFrom, double aTo, double bFrom, double bTo) {
  return std::max(0.0, std::min(aTo, bTo) - std::max(aFrom, bFrom));
}

/// Share of the smaller extent that both have.
double sharedExtent(double aFrom, double aTo, double bFrom, double bTo) {
  const double smaller = std::min(aTo - aFrom, bTo - bFrom);
  return smaller > 0 ? shared(aFrom, aTo, bFrom, bTo) / smaller : 0;
}

/// Where the outline crosses the middle lines of its outer box: sides at their middle.
Rect middleBox(const Polygon& panel, const Rect& outer) {
  const Point c = outer.centre();
  Rect box{{1e300, 1e300}, {-1e300, -1e300}};
  const std::size_t n = panel.points.size();
  for (std::size_t i = 0; i < n; ++i) {
    const Point a = panel.points[i], b = panel.points[(i + 1) % n];
    if ((a.y < c.y) != (b.y < c.y)) {
      const double x = a.x + (b.x - a.x) * (c.y - a.y) / (b.y - a.y);
      box.min.x = std::min(box.min.x, x);
      box.max.x = std::max(box.max.x, x);
    }
    if ((a.x < c.x) != (b.x < c.x)) {
      const double y = a.y + (b.y - a.y) * (c.x - a.x) / (b.x - a.x);
      box.min.y = std::min(box.min.y, y);
      box.max.y = std::max(box.max.y, y);
    }
  }
  return box.width() > 0 && box.height() > 0 ? box : outer;
}

/// Largest rectangle inside `whole` that keeps clear of all `holes`: every pair of possible
/// sides, then the tallest gap between the holes that reach in.
Rect largestClearRect(const Rect& whole, const std::vector<Rect>& holesByTop) {
  std::vector<double> xs{whole.min.x, whole.max.x};
  for (const Rect& h : holesByTop) {
    xs.push_back(std::clamp(h.min.x, whole.min.x, whole.max.x));
    xs.push_back(std::clamp(h.max.x, whole.min.x, whole.max.x));
  }
  std::sort(xs.begin(), xs.end());
  Rect best{whole.min, whole.min};
  for (std::size_t l = 0; l < xs.size(); ++l) {
    for (std::size_t r = xs.size() - 1; r > l; --r) {
      if ((xs[r] - xs[l]) * whole.height() <= best.area()) break;
      double top = whole.min.y;
      const auto keep = [&](double bottom) {
        const Rect gap{{xs[l], top}, {xs[r], bottom}};
        if (bottom > top && gap.area() > best.area()) best = gap;
      };
      for (const Rect& h : holesByTop) {
        if (h.max.x <= xs[l] || h.min.x >= xs[r]) continue;
        keep(h.min.y);
        top = std::max(top, h.max.y);
      }
      keep(whole.max.y);
    }
  }
  return best.area() > 0 ? best : whole;
}

}  // namespace

Rect readingBox(const Polygon& panel, ReadingDirection direction) {
  Rect box = middleBox(panel, bounds(panel));
  if (direction == ReadingDirection::RightToLeft) {
    box = {{-box.max.x, box.min.y}, {-box.min.x, box.max.y}};
  }
  return box;
}

double overlapShare(const Rect& a, const Rect& b) {
  const double both =
      shared(a.min.x, a.max.x, b.min.x, b.max.x) * shared(a.min.y, a.max.y, b.min.y, b.max.y);
  const double smaller = std::min(a.area(), b.area());
  return smaller > 0 ? both / smaller : 0;
}

PanelRelations::PanelRelations(const std::vector<Polygon>& panels, ReadingDirection direction,
                               const std::vector<int>& layer, const ReaderPreferences& preferences)
    : likes(preferences), count(static_cast<int>(panels.size())) {
  const auto n = panels.size();
  boxes.reserve(n);
  Rect page{{1e300, 1e300}, {-1e300, -1e300}};
  for (const Polygon& panel : panels) {
    const Rect box = readingBox(panel, direction);
    boxes.push_back(box);
    page.min = {std::min(page.min.x, box.min.x), std::min(page.min.y, box.min.y)};
    page.max = {std::max(page.max.x, box.max.x), std::max(page.max.y, box.max.y)};
  }
  aligned = likes.aligned * std::max(page.width(), page.height());
  free = boxes;
  for (auto* sets : {&right, &below, &left, &above, &onTop}) sets->assign(n, 0);
  base.assign(n, -1);
  findBases(layer);
  findFreeParts();
  for (int a = 0; a < count; ++a) {
    for (int b = a + 1; b < count; ++b) relate(a, b);
  }
}

void PanelRelations::findBases(const std::vector<int>& layer) {
  const bool layered = layer.size() == boxes.size();
  for (int i = 0; i < count; ++i) {
    double smallest = std::numeric_limits<double>::infinity();
    for (int j = 0; j < count; ++j) {
      if (i == j || boxes[j].area() <= boxes[i].area()) continue;
      if (layered && layer[i] <= layer[j]) continue;
      // Told of layers, half is enough; untold, only what lies inside is an inset.
      if (overlapShare(boxes[i], boxes[j]) < (layered ? 0.5 : 0.8)) continue;
      if (boxes[j].area() >= smallest) continue;
      smallest = boxes[j].area();
      base[i] = j;
    }
    if (base[i] >= 0) onTop[base[i]] |= only(i);
  }
}

void PanelRelations::findFreeParts() {
  for (int i = 0; i < count; ++i) {
    if (!onTop[i]) continue;
    std::vector<Rect> holes;
    for (int j = 0; j < count; ++j) {
      if (onTop[i] & only(j)) holes.push_back(boxes[j]);
    }
    std::sort(holes.begin(), holes.end(),
              [](const Rect& a, const Rect& b) { return a.min.y < b.min.y; });
    free[i] = largestClearRect(boxes[i], holes);
  }
}

void PanelRelations::relate(int a, int b) {
  // Against its own insets a base panel counts as the part of it that is seen.
  const Rect& p = base[b] == a ? free[a] : boxes[a];
  const Rect& q = base[a] == b ? free[b] : boxes[b];
  const double sideBySide = sharedExtent(p.min.y, p.max.y, q.min.y, q.max.y);
  const double stacked = sharedExtent(p.min.x, p.max.x, q.min.x, q.max.x);
  if (std::max(sideBySide, stacked) <= likes.sharedExtent) return;
  if (sideBySide >= stacked) {
    const bool bRight = q.centre().x > p.centre().x;
    right[bRight ? a : b] |= only(bRight ? b : a);
    left[bRight ? b : a] |= only(bRight ? a : b);
  } else {
    const bool bBelow = q.centre().y > p.centre().y;
    below[bBelow ? a : b] |= only(bBelow ? b : a);
    above[bBelow ? b : a] |= only(bBelow ? a : b);
  }
}

}  // namespace tw
