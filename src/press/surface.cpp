#include "press/surface.h"

namespace tw {

Path::Path(const Region& region) {
  for (const Polygon& polygon : region) add(polygon.points, true);
}

Path::Path(const Polygon& polygon) {
  add(polygon.points, true);
}

Path::Path(const Rect& rect) {
  add({rect.min, {rect.max.x, rect.min.y}, rect.max, {rect.min.x, rect.max.y}}, true);
}

void Path::moveTo(Point p) {
  steps_.push_back(Step::Move);
  points_.push_back(p);
}

void Path::lineTo(Point p) {
  steps_.push_back(Step::Line);
  points_.push_back(p);
}

void Path::curveTo(Point a, Point b, Point p) {
  steps_.push_back(Step::Curve);
  points_.insert(points_.end(), {a, b, p});
}

void Path::close() {
  steps_.push_back(Step::Close);
}

void Path::add(const std::vector<Point>& points, bool closed) {
  if (points.empty()) return;
  steps_.push_back(Step::Move);
  steps_.insert(steps_.end(), points.size() - 1, Step::Line);
  points_.insert(points_.end(), points.begin(), points.end());
  if (closed) close();
}

void Path::add(const Path& other) {
  steps_.insert(steps_.end(), other.steps_.begin(), other.steps_.end());
  points_.insert(points_.end(), other.points_.begin(), other.points_.end());
}

}  // namespace tw
