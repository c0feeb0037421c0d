#include "geometry/drawing.h"

#include <algorithm>
#include <numbers>

#include "base/result.h"
#include "geometry/polygon.h"

namespace tw {

namespace {

constexpr int kCapCorners = 6;

Vector directionAt(const std::vector<Point>& p, std::size_t i) {
  const Point& before = p[i > 0 ? i - 1 : i];
  const Point& after = p[i + 1 < p.size() ? i + 1 : i];
  return (after - before).unit();
}

/// Half a circle from the left side to the right side of a line that goes `forward`.
void addCap(std::vector<Point>& out, Point at, Vector forward, double radius) {
  const double start = std::atan2(-forward.x, forward.y);
  for (int i = 1; i < kCapCorners; ++i) {
    const double a = start + std::numbers::pi * i / kCapCorners;
    out.push_back({at.x + radius * std::cos(a), at.y + radius * std::sin(a)});
  }
}

}  // namespace

Polygon outlineOf(const Stroke& stroke) {
  const auto& p = stroke.points;
  ensure(p.size() == stroke.widths.size(), "a stroke has one width per point");
  if (p.empty()) return {};
  if (p.size() == 1) return ellipse(p[0], stroke.widths[0] / 2, stroke.widths[0] / 2, 12);
  std::vector<Point> left, right;
  for (std::size_t i = 0; i < p.size(); ++i) {
    const Vector d = directionAt(p, i);
    const Vector side = Vector{d.y, -d.x} * (stroke.widths[i] / 2);
    left.push_back(p[i] + side);
    right.push_back(p[i] - side);
  }
  Polygon out{left};
  addCap(out.points, p.back(), directionAt(p, p.size() - 1), stroke.widths.back() / 2);
  out.points.insert(out.points.end(), right.rbegin(), right.rend());
  addCap(out.points, p.front(), -directionAt(p, 0), stroke.widths.front() / 2);
  return out;
}

}  // namespace tw
