// Flat geometry of the page. A Point is a place, a Vector a displacement; both in millimetres
// from the trim's top left corner, y down, unless a name says otherwise.
#pragma once

#include <cmath>
#include <vector>

namespace tw {

struct Vector {
  double x = 0, y = 0;

  double length() const { return std::hypot(x, y); }
  /// Same direction, length 1; the zero vector stays zero.
  Vector unit() const {
    const double l = length();
    return l > 0 ? Vector{x / l, y / l} : Vector{};
  }
  Vector operator+(Vector o) const { return {x + o.x, y + o.y}; }
  Vector operator-(Vector o) const { return {x - o.x, y - o.y}; }
  Vector operator*(double k) const { return {x * k, y * k}; }
  Vector operator-() const { return {-x, -y}; }
  bool operator==(const Vector&) const = default;
};

struct Point {
  double x = 0, y = 0;

  Point operator+(Vector v) const { return {x + v.x, y + v.y}; }
  Point operator-(Vector v) const { return {x - v.x, y - v.y}; }
  Vector operator-(Point o) const { return {x - o.x, y - o.y}; }
  bool operator==(const Point&) const = default;
};

inline double dot(Vector a, Vector b) {
  return a.x * b.x + a.y * b.y;
}
inline double cross(Vector a, Vector b) {
  return a.x * b.y - a.y * b.x;
}
inline Point between(Point a, Point b, double share) {
  return a + (b - a) * share;
}

/// Axis-parallel rectangle; min is the top left corner.
struct Rect {
  Point min, max;

  double width() const { return max.x - min.x; }
  double height() const { return max.y - min.y; }
  double area() const { return width() * height(); }
  Point centre() const { return between(min, max, 0.5); }
  bool contains(Point p) const {
    return p.x >= min.x && p.x <= max.x && p.y >= min.y && p.y <= max.y;
  }
  Rect inset(double by) const { return {{min.x + by, min.y + by}, {max.x - by, max.y - by}}; }
  Rect outset(double by) const { return inset(-by); }
  bool operator==(const Rect&) const = default;
};

/// A closed outline; the last point joins the first. Orientation is not promised.
struct Polygon {
  std::vector<Point> points;
  bool operator==(const Polygon&) const = default;
};

/// Several outlines that together bound a region by the even-odd rule (holes allowed).
using Region = std::vector<Polygon>;

/// A ray of reading, gaze or motion.
struct Ray {
  Point from;
  Vector direction;
};

}  // namespace tw
