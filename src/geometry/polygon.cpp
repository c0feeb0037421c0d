#include "geometry/polygon.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>

#include "base/result.h"
#include "geometry/turn_area.h"

namespace tw {

namespace {

double squaredDistanceToSegment(Point p, Point a, Point b) {
  const Vector ab = b - a;
  const double length2 = dot(ab, ab);
  const double t = length2 > 0 ? std::clamp(dot(p - a, ab) / length2, 0.0, 1.0) : 0.0;
  const Vector off = p - (a + ab * t);
  return dot(off, off);
}

/// Calls use(a, b) for each edge.
template <class Use>
void eachEdge(const Polygon& polygon, Use use) {
  const auto& p = polygon.points;
  for (std::size_t i = 0, n = p.size(); i < n; ++i) use(p[i], p[(i + 1) % n]);
}

void keepFarthest(const std::vector<Point>& line, std::size_t first, std::size_t last,
                  double tolerance, std::vector<char>& keep) {
  double farthest = tolerance * tolerance;
  std::size_t split = 0;
  for (std::size_t i = first + 1; i < last; ++i) {
    const double d = squaredDistanceToSegment(line[i], line[first], line[last]);
    if (d > farthest) {
      farthest = d;
      split = i;
    }
  }
  if (split == 0) return;
  keep[split] = 1;
  keepFarthest(line, first, split, tolerance, keep);
  keepFarthest(line, split, last, tolerance, keep);
}

}  // namespace

double distanceToSegment(Point p, Point a, Point b) {
  return std::sqrt(squaredDistanceToSegment(p, a, b));
}

Polygon polygonOf(const Rect& r) {
  return {{r.min, {r.max.x, r.min.y}, r.max, {r.min.x, r.max.y}}};
}

Polygon ellipse(Point centre, double radiusX, double radiusY, int corners) {
  Polygon out;
  out.points.reserve(static_cast<std::size_t>(corners));
  for (int i = 0; i < corners; ++i) {
    const double a = 2 * std::numbers::pi * i / corners;
    out.points.push_back({centre.x + radiusX * std::cos(a), centre.y + radiusY * std::sin(a)});
  }
  return out;
}

Rect bounds(const std::vector<Point>& points) {
  if (points.empty()) return {};
  Rect r{points[0], points[0]};
  for (const Point& p : points) {
    r.min = {std::min(r.min.x, p.x), std::min(r.min.y, p.y)};
    r.max = {std::max(r.max.x, p.x), std::max(r.max.y, p.y)};
  }
  return r;
}

Rect bounds(const Polygon& polygon) {
  return bounds(polygon.points);
}

Rect bounds(const Region& region) {
  std::vector<Point> all;
  for (const Polygon& polygon : region)
    all.insert(all.end(), polygon.points.begin(), polygon.points.end());
  return bounds(all);
}

double turnArea(const Polygon& polygon) {
  double twice = 0;
  const auto& p = polygon.points;
  for (std::size_t i = 0; i < p.size(); ++i)
    twice += cross(p[i] - p.front(), p[(i + 1) % p.size()] - p.front());
  return twice / 2;
}

double area(const Polygon& polygon) {
  return std::abs(turnArea(polygon));
}

double area(const Region& region) {
  // Clipper orients holes against their outer outline, so signed areas add up.
  double sum = 0;
  for (const Polygon& polygon : region) sum += turnArea(polygon);
  return std::abs(sum);
}

Point centroid(const Polygon& polygon) {
  const double total = turnArea(polygon);
  if (std::abs(total) < 1e-12) return bounds(polygon).centre();
  double x = 0, y = 0;
  eachEdge(polygon, [&](Point a, Point b) {
    const double c = a.x * b.y - b.x * a.y;
    x += (a.x + b.x) * c;
    y += (a.y + b.y) * c;
  });
  return {x / (6 * total), y / (6 * total)};
}

bool contains(const Polygon& polygon, Point p) {
  bool inside = false;
  eachEdge(polygon, [&](Point a, Point b) {
    if ((a.y > p.y) != (b.y > p.y) && p.x < a.x + (b.x - a.x) * (p.y - a.y) / (b.y - a.y))
      inside = !inside;
  });
  return inside;
}

bool contains(const Region& region, Point p) {
  bool inside = false;
  for (const Polygon& polygon : region)
    if (contains(polygon, p)) inside = !inside;
  return inside;
}

bool isConvex(const Polygon& polygon) {
  const auto& p = polygon.points;
  const std::size_t n = p.size();
  int sign = 0;
  for (std::size_t i = 0; i < n; ++i) {
    const double c = cross(p[(i + 1) % n] - p[i], p[(i + 2) % n] - p[(i + 1) % n]);
    if (std::abs(c) < 1e-9) continue;
    const int s = c > 0 ? 1 : -1;
    if (sign != 0 && s != sign) return false;
    sign = s;
  }
  return n >= 3;
}

double distanceToOutline(const Polygon& polygon, Point p) {
  double least = std::numeric_limits<double>::infinity();
  eachEdge(polygon, [&](Point a, Point b) { least = std::min(least, distanceToSegment(p, a, b)); });
  return least;
}

Polygon hull(std::vector<Point> points) {
  std::sort(points.begin(), points.end(),
            [](Point a, Point b) { return a.x < b.x || (a.x == b.x && a.y < b.y); });
  points.erase(std::unique(points.begin(), points.end()), points.end());
  if (points.size() < 3) return {points};
  std::vector<Point> out(2 * points.size());
  std::size_t k = 0;
  const auto add = [&](Point p, std::size_t least) {
    while (k >= least && cross(out[k - 1] - out[k - 2], p - out[k - 2]) <= 0) --k;
    out[k++] = p;
  };
  for (const Point& p : points) add(p, 2);
  const std::size_t lower = k + 1;
  for (std::size_t i = points.size() - 1; i-- > 0;) add(points[i], lower);
  out.resize(k - 1);
  return {out};
}

std::optional<double> firstHit(const Ray& ray, const Polygon& polygon) {
  double nearest = std::numeric_limits<double>::infinity();
  eachEdge(polygon, [&](Point a, Point b) {
    const Vector edge = b - a;
    const double across = cross(ray.direction, edge);
    if (std::abs(across) < 1e-15) return;
    const double t = cross(a - ray.from, edge) / across;
    const double s = cross(a - ray.from, ray.direction) / across;
    if (t >= 0 && s >= 0 && s <= 1) nearest = std::min(nearest, t);
  });
  if (!std::isfinite(nearest)) return std::nullopt;
  return nearest * ray.direction.length();
}

std::vector<std::size_t> pointsThatTell(const std::vector<Point>& line, double tolerance) {
  if (line.empty()) return {};
  std::vector<char> keep(line.size(), 0);
  keep.front() = keep.back() = 1;
  keepFarthest(line, 0, line.size() - 1, tolerance, keep);
  std::vector<std::size_t> out;
  for (std::size_t i = 0; i < line.size(); ++i)
    if (keep[i]) out.push_back(i);
  return out;
}

std::vector<Point> simplified(const std::vector<Point>& line, double tolerance) {
  std::vector<Point> out;
  for (const std::size_t i : pointsThatTell(line, tolerance)) out.push_back(line[i]);
  return out;
}

Polygon moved(const Polygon& polygon, Vector by) {
  Polygon out = polygon;
  for (Point& p : out.points) p = p + by;
  return out;
}

Polygon mirrored(const Polygon& polygon, double axis) {
  Polygon out = polygon;
  for (Point& p : out.points) p.x = 2 * axis - p.x;
  return out;
}

}  // namespace tw
