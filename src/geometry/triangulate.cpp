// Ear clipping (G. Meisters 1975, "Polygons have ears", doi:10.2307/2319703): every simple polygon
// has a corner, an ear, whose triangle with both neighbours lies inside; it is cut off and the rest
// is a polygon again.
//
//  1 The turn of the polygon is the sign of its area.
//  2 Going round, a corner is an ear when it turns that way and no other corner lies in its
//    triangle. Corners that repeat one of the three places are no hindrance.
//  3 When nothing is an ear (the polygon crosses itself, or what is left has no area) the corner
//    with the least bad triangle goes, so that it always ends.
// Cost: up to the square of the corners for each ear; meant for tens of corners, thousands work.
// Does badly: slivers, which it does not avoid.
#include "geometry/triangulate.h"

#include <cmath>
#include <numeric>

namespace tw {

namespace {

double doubleArea(Point a, Point b, Point c) {
  return (b.x - a.x) * (c.y - a.y) - (c.x - a.x) * (b.y - a.y);
}

bool isSame(Point a, Point b) {
  return a.x == b.x && a.y == b.y;
}

class EarClipper {
 public:
  explicit EarClipper(const std::vector<Point>& corners) : corners_(corners) {
    left_.resize(corners.size());
    std::iota(left_.begin(), left_.end(), std::size_t{0});
    double area = 0;
    for (std::size_t i = 1; i + 1 < corners.size(); ++i)
      area += doubleArea(corners[0], corners[i], corners[i + 1]);
    turn_ = area < 0 ? -1 : 1;
  }

  std::vector<std::array<std::size_t, 3>> run() {
    while (left_.size() > 3) cut(nextEar());
    if (left_.size() == 3) out_.push_back({left_[0], left_[1], left_[2]});
    return std::move(out_);
  }

 private:
  std::array<std::size_t, 3> around(std::size_t i) const {
    const std::size_t n = left_.size();
    return {left_[(i + n - 1) % n], left_[i], left_[(i + 1) % n]};
  }

  double areaAt(std::size_t i) const {
    const auto t = around(i);
    return turn_ * doubleArea(corners_[t[0]], corners_[t[1]], corners_[t[2]]);
  }

  bool isFree(std::size_t i) const {
    const auto t = around(i);
    const Point a = corners_[t[0]], b = corners_[t[1]], c = corners_[t[2]];
    for (const std::size_t k : left_) {
      const Point p = corners_[k];
      if (isSame(p, a) || isSame(p, b) || isSame(p, c)) continue;
      if (turn_ * doubleArea(a, b, p) >= 0 && turn_ * doubleArea(b, c, p) >= 0 &&
          turn_ * doubleArea(c, a, p) >= 0)
        return false;
    }
    return true;
  }

  /// From where the last one was cut, so that a strip is not clipped into a fan.
  std::size_t nextEar() const {
    std::size_t least = 0;
    for (std::size_t k = 0; k < left_.size(); ++k) {
      const std::size_t i = (from_ + k) % left_.size();
      const double area = areaAt(i);
      if (area > 0 && isFree(i)) return i;
      if (std::abs(area) < std::abs(areaAt(least))) least = i;
    }
    return least;
  }

  void cut(std::size_t i) {
    out_.push_back(around(i));
    left_.erase(left_.begin() + static_cast<std::ptrdiff_t>(i));
    from_ = i % left_.size();
  }

  const std::vector<Point>& corners_;
  std::vector<std::size_t> left_;
  double turn_ = 1;
  std::size_t from_ = 0;
  std::vector<std::array<std::size_t, 3>> out_;
};

}  // namespace

std::vector<std::array<std::size_t, 3>> triangulated(const std::vector<Point>& corners) {
  if (corners.size() < 3) return {};
  return EarClipper(corners).run();
}

}  // namespace tw
