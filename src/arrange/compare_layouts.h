// How this folder's tests compare layouts. Outlines are compared corner by corner from any starting
// corner and in either direction, so neither a polygon's first point nor its turn matters. The
// program itself tells layouts apart by their fingerprints.
#pragma once

#include <algorithm>
#include <cmath>
#include <vector>

#include "arrange/layout.h"
#include "geometry/polygon.h"

namespace tw {

inline bool near(Point a, Point b, double tolerance) {
  return std::abs(a.x - b.x) <= tolerance && std::abs(a.y - b.y) <= tolerance;
}

inline bool sameFrom(const std::vector<Point>& a, const std::vector<Point>& b, std::size_t start,
                     std::size_t step, double tolerance) {
  for (std::size_t i = 0, j = start; i < a.size(); ++i, j = (j + step) % b.size())
    if (!near(a[i], b[j], tolerance)) return false;
  return true;
}

inline bool sameOutline(const Polygon& a, const Polygon& b, double tolerance) {
  if (a.points.size() != b.points.size()) return false;
  const std::size_t count = b.points.size();
  for (std::size_t start = 0; start < count; ++start)
    if (sameFrom(a.points, b.points, start, 1, tolerance) ||
        sameFrom(a.points, b.points, start, count - 1, tolerance))
      return true;
  return count == 0;
}

inline bool samePanel(const LayoutPanel& a, const LayoutPanel& b, double tolerance) {
  return a.ground == b.ground && sameOutline(a.outline, b.outline, tolerance);
}

/// True when both show the same picture in the same reading order, within `tolerance` mm.
inline bool sameLayout(const Layout& a, const Layout& b, double tolerance = 0.5) {
  return std::equal(
      a.panels.begin(), a.panels.end(), b.panels.begin(), b.panels.end(),
      [&](const LayoutPanel& p, const LayoutPanel& q) { return samePanel(p, q, tolerance); });
}

/// True when both show the same shapes, whatever the order.
inline bool samePicture(const Layout& a, const Layout& b, double tolerance = 0.5) {
  if (a.panels.size() != b.panels.size()) return false;
  std::vector<bool> taken(b.panels.size());
  for (const LayoutPanel& panel : a.panels) {
    std::size_t i = 0;
    while (i < taken.size() && (taken[i] || !samePanel(panel, b.panels[i], tolerance))) ++i;
    if (i == taken.size()) return false;
    taken[i] = true;
  }
  return true;
}

/// The ground's outline without the insets on it.
inline Region freeGround(const Layout& layout) {
  Region ground, insets;
  for (const LayoutPanel& panel : layout.panels)
    (panel.ground ? ground : insets).push_back(panel.outline);
  return ground.empty() ? Region{} : without(ground, insets);
}

}  // namespace tw
