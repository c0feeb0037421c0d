// Convex pieces.
//
// 1 Triangles by cutting off ears (a corner whose triangle holds no other corner), the roundest
//   first, so that slivers are rare. G. H. Meisters, Polygons have ears, 1975 (from memory).
// 2 Diagonals are dropped one after the other where the two pieces together stay convex: at most
//   four times the least number of pieces (Hertel and Mehlhorn 1983, from memory).
// Cost: about n² for n corners. Does badly: the pieces are few, not fewest.
#include "geometry/fit_pieces.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <polyclipping/clipper.hpp>

#include "geometry/polygon.h"

namespace tw {

namespace {

constexpr double kGridPerMm = 1e4;  // as in clipping.cpp

using Piece = std::vector<int>;  // corners by index, positive turn

double turnAt(Point a, Point b, Point c) {
  return cross(b - a, c - b);
}

class Cutter {
 public:
  explicit Cutter(const std::vector<Point>& points) : points_(points) {
    for (int i = 0; i < static_cast<int>(points.size()); ++i) left_.push_back(i);
  }

  std::vector<Piece> pieces() {
    while (left_.size() > 3) {
      const int ear = roundestEar();
      if (ear < 0) break;
      cutOff(static_cast<std::size_t>(ear));
    }
    // Left over are the last triangle, or what has no ear because it crosses itself.
    if (left_.size() == 3) triangles_.push_back(left_);
    if (left_.size() > 3) triangles_.push_back(hullOfLeft());
    return merged();
  }

 private:
  int at(std::size_t i) const { return left_[i % left_.size()]; }
  const Point& point(int i) const { return points_[static_cast<std::size_t>(i)]; }

  bool holdsNone(int a, int b, int c) const {
    for (const int i : left_) {
      if (i == a || i == b || i == c) continue;
      const Point p = point(i);
      if (p == point(a) || p == point(b) || p == point(c)) continue;
      if (turnAt(point(a), point(b), p) >= 0 && turnAt(point(b), point(c), p) >= 0 &&
          turnAt(point(c), point(a), p) >= 0)
        return false;
    }
    return true;
  }

  int roundestEar() const {
    int best = -1;
    double most = -1;
    for (std::size_t i = 0; i < left_.size(); ++i) {
      const int a = at(i + left_.size() - 1), b = at(i), c = at(i + 1);
      const double turn = turnAt(point(a), point(b), point(c));
      if (turn < 0) continue;
      const double longest =
          std::max({(point(b) - point(a)).length(), (point(c) - point(b)).length(),
                    (point(a) - point(c)).length()});
      const double round = longest > 0 ? turn / (longest * longest) : 0;
      if (round > most && holdsNone(a, b, c)) {
        most = round;
        best = static_cast<int>(i);
      }
    }
    return best;
  }

  void cutOff(std::size_t i) {
    const int a = at(i + left_.size() - 1), b = at(i), c = at(i + 1);
    if (turnAt(point(a), point(b), point(c)) > 0) {
      triangles_.push_back({a, b, c});
      diagonals_.emplace_back(a, c);
    }
    left_.erase(left_.begin() + static_cast<std::ptrdiff_t>(i));
  }

  Piece hullOfLeft() const {
    std::vector<Point> rest;
    for (const int i : left_) rest.push_back(point(i));
    Polygon around = hull(rest);
    if (turnArea(around) < 0) std::reverse(around.points.begin(), around.points.end());
    Piece piece;
    for (const Point& p : around.points)
      piece.push_back(
          *std::find_if(left_.begin(), left_.end(), [&](int i) { return point(i) == p; }));
    return piece;
  }

  std::vector<Piece> merged() {
    std::map<std::pair<int, int>, std::size_t> owner;  // directed edge → its piece
    const auto own = [&](std::size_t p) {
      const Piece& piece = triangles_[p];
      for (std::size_t i = 0; i < piece.size(); ++i)
        owner[{piece[i], piece[(i + 1) % piece.size()]}] = p;
    };
    for (std::size_t p = 0; p < triangles_.size(); ++p) own(p);
    for (const auto& [a, c] : diagonals_) {
      const auto one = owner.find({c, a}), other = owner.find({a, c});
      if (one == owner.end() || other == owner.end() || one->second == other->second) continue;
      const std::size_t keep = one->second, drop = other->second;
      Piece both = joined(triangles_[keep], triangles_[drop], c, a);
      if (!isConvexPiece(both)) continue;
      triangles_[keep] = std::move(both);
      triangles_[drop].clear();
      own(keep);
    }
    std::erase_if(triangles_, [](const Piece& piece) { return piece.empty(); });
    return std::move(triangles_);
  }

  /// `one` has the edge from → to, `other` has to → from.
  static Piece joined(const Piece& one, const Piece& other, int from, int to) {
    Piece both;
    const auto append = [&](const Piece& piece, int first, int last) {
      auto i =
          static_cast<std::size_t>(std::find(piece.begin(), piece.end(), first) - piece.begin());
      for (; piece[i] != last; i = (i + 1) % piece.size()) both.push_back(piece[i]);
    };
    append(one, to, from);
    append(other, from, to);
    return both;
  }

  bool isConvexPiece(const Piece& piece) const {
    const std::size_t n = piece.size();
    for (std::size_t i = 0; i < n; ++i)
      if (turnAt(point(piece[i]), point(piece[(i + 1) % n]), point(piece[(i + 2) % n])) < 0)
        return false;
    return true;
  }

  const std::vector<Point>& points_;
  Piece left_;
  std::vector<Piece> triangles_;
  std::vector<std::pair<int, int>> diagonals_;
};

std::vector<Point> cleaned(const Polygon& outline) {
  std::vector<Point> out;
  for (const Point& p : outline.points)
    if (out.empty() || !(p == out.back())) out.push_back(p);
  while (out.size() > 1 && out.front() == out.back()) out.pop_back();
  if (turnArea({out}) < 0) std::reverse(out.begin(), out.end());
  return out;
}

}  // namespace

std::vector<Polygon> convexPieces(const Polygon& outline) {
  const std::vector<Point> points = cleaned(outline);
  std::vector<Polygon> out;
  if (points.size() < 3) return out;
  for (const Piece& piece : Cutter(points).pieces()) {
    Polygon polygon;
    for (const int i : piece) polygon.points.push_back(points[static_cast<std::size_t>(i)]);
    if (turnArea(polygon) > 0) out.push_back(std::move(polygon));
  }
  return out;
}

std::vector<Holed> holedOutlines(const Region& region) {
  std::vector<int> depth(region.size(), 0);
  const auto holds = [&](std::size_t a, std::size_t b) {
    if (a == b || region[b].points.empty()) return false;
    const Rect outer = bounds(region[a]), inner = bounds(region[b]);
    if (!outer.contains(inner.min) || !outer.contains(inner.max)) return false;
    const auto& points = region[b].points;
    return std::all_of(points.begin(), points.end(), [&](Point p) {
      return contains(region[a], p) || distanceToOutline(region[a], p) < 1e-9;
    });
  };
  for (std::size_t a = 0; a < region.size(); ++a)
    for (std::size_t b = 0; b < region.size(); ++b) depth[b] += holds(a, b);
  std::vector<Holed> out;
  for (std::size_t a = 0; a < region.size(); ++a) {
    if (depth[a] % 2 == 1) continue;
    out.push_back({region[a], {}});
    for (std::size_t b = 0; b < region.size(); ++b)
      if (depth[b] == depth[a] + 1 && holds(a, b)) out.back().holes.push_back(region[b]);
  }
  return out;
}

std::vector<Polygon> pocketsOf(const Polygon& outer, const Polygon& hull) {
  const std::vector<Point> points = cleaned(outer);
  const std::size_t n = points.size();
  const auto isCorner = [&](std::size_t i) {
    return std::find(hull.points.begin(), hull.points.end(), points[i % n]) != hull.points.end();
  };
  std::vector<Polygon> out;
  for (std::size_t i = 0; i < n; ++i) {
    if (!isCorner(i) || isCorner(i + 1)) continue;
    Polygon pocket{{points[i]}};
    std::size_t k = i + 1;
    for (; !isCorner(k); ++k) pocket.points.push_back(points[k % n]);
    pocket.points.push_back(points[k % n]);
    if (std::abs(turnArea(pocket)) > 1e-12) out.push_back(std::move(pocket));
  }
  return out;
}

Region grownBevelled(const std::vector<Polygon>& shapes, double by) {
  ClipperLib::Paths paths;
  for (const Polygon& shape : shapes) {
    ClipperLib::Path path;
    for (const Point& p : cleaned(shape))
      path.emplace_back(std::llround(p.x * kGridPerMm), std::llround(p.y * kGridPerMm));
    if (!ClipperLib::Orientation(path)) std::reverse(path.begin(), path.end());
    paths.push_back(std::move(path));
  }
  ClipperLib::ClipperOffset grower;
  grower.AddPaths(paths, ClipperLib::jtSquare, ClipperLib::etClosedPolygon);
  ClipperLib::Paths grown;
  grower.Execute(grown, by * kGridPerMm);
  Region out;
  for (const ClipperLib::Path& path : grown) {
    if (!ClipperLib::Orientation(path)) continue;  // a clearing shut in by what has grown
    Polygon polygon;
    for (const ClipperLib::IntPoint& p : path)
      polygon.points.push_back(
          {static_cast<double>(p.X) / kGridPerMm, static_cast<double>(p.Y) / kGridPerMm});
    out.push_back(std::move(polygon));
  }
  return out;
}

}  // namespace tw
