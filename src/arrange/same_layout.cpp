// When are two layouts the same? Trees that differ can draw the same page: the 2 × 2 grid is tiers
// of columns and columns of tiers. Outlines are compared corner by corner from any starting
// corner and in either direction, so neither the polygon's first point nor its turn matters.
#include <algorithm>
#include <cmath>

#include "arrange/layout.h"
#include "geometry/polygon.h"

namespace tw {

namespace {

constexpr double kGrid = 0.5;  // mm, of fingerprints
// Corners often fall on round numbers, so the grid is moved off them by an odd amount.
constexpr double kGridShift = 0.1377;

bool near(Point a, Point b, double tolerance) {
  return std::abs(a.x - b.x) <= tolerance && std::abs(a.y - b.y) <= tolerance;
}

bool sameFrom(const std::vector<Point>& a, const std::vector<Point>& b, std::size_t start,
              std::size_t step, double tolerance) {
  for (std::size_t i = 0, j = start; i < a.size(); ++i, j = (j + step) % b.size())
    if (!near(a[i], b[j], tolerance)) return false;
  return true;
}

bool sameOutline(const Polygon& a, const Polygon& b, double tolerance) {
  if (a.points.size() != b.points.size()) return false;
  const std::size_t count = b.points.size();
  for (std::size_t start = 0; start < count; ++start)
    if (sameFrom(a.points, b.points, start, 1, tolerance) ||
        sameFrom(a.points, b.points, start, count - 1, tolerance))
      return true;
  return count == 0;
}

bool samePanel(const LayoutPanel& a, const LayoutPanel& b, double tolerance) {
  return a.ground == b.ground && sameOutline(a.outline, b.outline, tolerance);
}

/// 64-bit FNV-1a: Fowler, Noll, Vo; constants as in the IETF draft, from memory.
class Fingerprint {
 public:
  void add(std::uint64_t value) {
    for (int byte = 0; byte < 8; ++byte, value >>= 8)
      sum_ = (sum_ ^ (value & 0xFF)) * 0x100000001B3u;
  }
  std::uint64_t sum() const { return sum_; }

 private:
  std::uint64_t sum_ = 0xCBF29CE484222325u;
};

using GridPoint = std::pair<long, long>;

/// Corners on the grid, sorted: enough to tell convex outlines apart.
std::vector<GridPoint> gridCorners(const Polygon& outline) {
  std::vector<GridPoint> corners;
  for (const Point p : outline.points)
    corners.emplace_back(std::lround((p.x + kGridShift) / kGrid),
                         std::lround((p.y + kGridShift) / kGrid));
  std::sort(corners.begin(), corners.end());
  corners.erase(std::unique(corners.begin(), corners.end()), corners.end());
  return corners;
}

}  // namespace

bool sameLayout(const Layout& a, const Layout& b, double tolerance) {
  return std::equal(
      a.panels.begin(), a.panels.end(), b.panels.begin(), b.panels.end(),
      [&](const LayoutPanel& p, const LayoutPanel& q) { return samePanel(p, q, tolerance); });
}

bool samePicture(const Layout& a, const Layout& b, double tolerance) {
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

std::uint64_t fingerprint(const Layout& layout) {
  Fingerprint print;
  for (const LayoutPanel& panel : layout.panels) {
    const std::vector<GridPoint> corners = gridCorners(panel.outline);
    print.add(corners.size());
    print.add(panel.ground ? 1 : 0);
    for (const auto& [x, y] : corners) {
      print.add(static_cast<std::uint64_t>(x));
      print.add(static_cast<std::uint64_t>(y));
    }
  }
  return print.sum();
}

Region freeGround(const Layout& layout) {
  Region ground, insets;
  for (const LayoutPanel& panel : layout.panels)
    (panel.ground ? ground : insets).push_back(panel.outline);
  return ground.empty() ? Region{} : without(ground, insets);
}

}  // namespace tw
