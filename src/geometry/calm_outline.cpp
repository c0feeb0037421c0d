#include "geometry/calm_outline.h"

#include <algorithm>
#include <cmath>

namespace tw {

namespace {

constexpr int kStepsInReach = 4;

double lengthOf(const std::vector<Point>& p) {
  double out = 0;
  for (std::size_t i = 0; i < p.size(); ++i) out += (p[(i + 1) % p.size()] - p[i]).length();
  return out;
}

/// `count` places at equal ways along the outline.
std::vector<Point> walked(const std::vector<Point>& p, std::size_t count, double length) {
  std::vector<Point> out;
  std::size_t i = 0;
  double before = 0, edge = (p[1 % p.size()] - p[0]).length();
  for (std::size_t k = 0; k < count; ++k) {
    const double way = length * static_cast<double>(k) / static_cast<double>(count);
    while (before + edge < way && i + 1 < p.size()) {
      before += edge;
      ++i;
      edge = (p[(i + 1) % p.size()] - p[i]).length();
    }
    out.push_back(between(p[i], p[(i + 1) % p.size()], edge > 0 ? (way - before) / edge : 0));
  }
  return out;
}

}  // namespace

Polygon calmOutline(const Polygon& outline, double reachMm) {
  const double length = lengthOf(outline.points);
  if (outline.points.size() < 3 || !(reachMm > 0) || length < 6 * reachMm) return outline;
  const auto count = static_cast<std::size_t>(std::ceil(kStepsInReach * length / reachMm));
  const std::vector<Point> steps = walked(outline.points, count, length);
  Polygon out;
  out.points.reserve(count);
  for (std::size_t k = 0; k < count; ++k) {
    Vector sum;
    for (std::size_t j = 0; j <= 2 * kStepsInReach; ++j)
      sum = sum + (steps[(k + count + j - kStepsInReach) % count] - steps[k]);
    out.points.push_back(steps[k] + sum * (1.0 / (2 * kStepsInReach + 1)));
  }
  return out;
}

}  // namespace tw
