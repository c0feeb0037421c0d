#include "arrange/clip_convex.h"

namespace tw {

namespace {

constexpr double kSamePoint = 1e-3;  // mm

}  // namespace

Polygon clipped(const Polygon& polygon, Point on, Vector normal) {
  Polygon kept;
  const std::size_t count = polygon.points.size();
  const auto keep = [&](Point p) {
    if (kept.points.empty() || (p - kept.points.back()).length() > kSamePoint)
      kept.points.push_back(p);
  };
  for (std::size_t i = 0; i < count; ++i) {
    const Point a = polygon.points[i], b = polygon.points[(i + 1) % count];
    const double da = dot(a - on, normal), db = dot(b - on, normal);
    if (da <= 0) keep(a);
    if ((da < 0 && db > 0) || (da > 0 && db < 0)) keep(between(a, b, da / (da - db)));
  }
  while (kept.points.size() > 1 &&
         (kept.points.front() - kept.points.back()).length() <= kSamePoint)
    kept.points.pop_back();
  return kept;
}

Polygon clipped(const Polygon& polygon, const Rect& rect) {
  Polygon out = clipped(polygon, rect.min, Vector{-1, 0});
  out = clipped(out, rect.min, Vector{0, -1});
  out = clipped(out, rect.max, Vector{1, 0});
  return clipped(out, rect.max, Vector{0, 1});
}

}  // namespace tw
