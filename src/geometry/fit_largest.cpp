// The largest fit.
//
// Words: the hull of the region is the smallest convex outline around it; its pockets and holes are
// what the region leaves of the hull. A support h(n) is how far the figure reaches along n.
//
// 1 A figure inside the region is inside its hull: scale · h(n) + n · move ≤ b − margin for each
//   side (n, b) of the hull. Only the figure's own hull matters for that. For a convex region this
//   linear program in three unknowns is the whole answer (Sharir and Toledo 1994, as cited by Chan
//   and Hair 2024).
// 2 Else the figure must also keep off pockets and holes, grown by the margin: both are cut into
//   convex pieces and searched (fit_search.cpp). Twelve sides around the figure are tried first:
//   one piece, and what it reaches the figure reaches too.
// 3 Again with the figure turned about, if that is allowed; the larger one is kept.
// Cost: microseconds for convex regions, some milliseconds for silhouettes of 200 corners else.
// Does badly: never rotates; a hole of the figure (an arm akimbo) counts as filled; with a margin,
// inner corners of the region are kept off by up to 8 % more than it.
#include "geometry/fit_largest.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "base/result.h"
#include "geometry/fit_pieces.h"
#include "geometry/fit_search.h"
#include "geometry/polygon.h"

namespace tw {

namespace {

constexpr double kSameSide = 1e-6;
constexpr double kSameScale = 1e-9;
constexpr int kCoarseSides = 12;

/// Figure and region are brought to size 1 about their middles before anything is solved.
struct Frame {
  Point middle;
  double size = 1;
  Point into(Point p) const { return {(p.x - middle.x) / size, (p.y - middle.y) / size}; }
  Polygon into(const Polygon& polygon) const {
    Polygon out;
    for (const Point& p : polygon.points) out.points.push_back(into(p));
    return out;
  }
};

Frame frameOf(const Region& region) {
  const Rect box = bounds(region);
  return {box.centre(), std::max({box.width(), box.height(), 1e-12})};
}

double reach(const Polygon& polygon, Vector direction) {
  double most = dot(polygon.points.front() - Point{}, direction);
  for (const Point& p : polygon.points) most = std::max(most, dot(p - Point{}, direction));
  return most;
}

/// Sides in a few fixed directions around a convex outline, each touching it.
Polygon coarselyAround(const Polygon& convex) {
  std::vector<Point> corners;
  const double step = 2 * std::numbers::pi / kCoarseSides;
  for (int i = 0; i < kCoarseSides; ++i) {
    const Vector one{std::cos(i * step), std::sin(i * step)};
    const Vector next{std::cos((i + 1) * step), std::sin((i + 1) * step)};
    // Where the two sides meet: one · p = a, next · p = b.
    const double a = reach(convex, one), b = reach(convex, next), d = cross(one, next);
    corners.push_back({(a * next.y - b * one.y) / d, (b * one.x - a * next.x) / d});
  }
  return hull(std::move(corners));
}

struct Found {
  Fit fit;
  double most = 0;  ///< no larger scale is possible
};

class Fitting {
 public:
  Fitting(const FitQuestion& question, const Holed& region, bool mirror)
      : question_(question), mirror_(mirror) {
    Region figure = question.figure;
    if (mirror)
      for (Polygon& polygon : figure) polygon = mirrored(polygon, 0);
    ofFigure_ = frameOf(figure);
    ofRegion_ = frameOf({region.outer});
    std::vector<Point> all;
    for (const Polygon& polygon : figure) {
      figure_.push_back(ofFigure_.into(polygon));
      all.insert(all.end(), figure_.back().points.begin(), figure_.back().points.end());
    }
    hull_ = hull(std::move(all));
    addHullLimits(hull(region.outer.points));
    addObstacles(region);
  }

  /// Nothing larger than atLeast may be found; then the bound alone counts.
  Found run(double atLeast) {
    const double least = atLeast / unit();
    const auto bound = largestScale(space_.limits);
    if (!bound || bound->s <= least) return {};
    if (space_.obstacles.empty()) return {fitOf(*bound), bound->s * unit()};
    // A few sides around it first: what they reach the figure reaches.
    space_.pieces = {oriented(coarselyAround(hull_))};
    const FoundFit rough = searchFit(space_, least, question_.mostSteps / 4);
    space_.pieces.clear();
    for (const Polygon& polygon : figure_)
      for (Polygon& piece : convexPieces(polygon)) space_.pieces.push_back(std::move(piece));
    FoundFit fine = searchFit(space_, rough.best ? rough.best->s : least, question_.mostSteps);
    if (!fine.best) fine.best = rough.best;
    return {fine.best ? fitOf(*fine.best) : Fit{}, fine.most * unit()};
  }

 private:
  static Polygon oriented(Polygon polygon) {
    if (turnArea(polygon) < 0) std::reverse(polygon.points.begin(), polygon.points.end());
    return polygon;
  }
  double unit() const { return ofRegion_.size / ofFigure_.size; }

  bool isFlush(Vector normal, double at) const {
    if (!question_.flush) return false;
    return (normal - question_.flush->normal).length() < kSameSide &&
           std::abs(at - question_.flush->at) < kSameSide * ofRegion_.size;
  }

  void addHullLimits(const Polygon& around) {
    const Polygon sides = oriented(around);
    for (std::size_t i = 0; i < sides.points.size(); ++i) {
      const Point a = sides.points[i], b = sides.points[(i + 1) % sides.points.size()];
      const Vector normal = Vector{(b - a).y, -(b - a).x}.unit();
      const double at = dot(a - Point{}, normal);
      const bool flush = isFlush(normal, at);
      addLimit(normal, at - (flush ? 0 : question_.margin), flush);
    }
  }

  void addLimit(Vector normal, double at, bool equal) {
    const double limit = (at - dot(ofRegion_.middle - Point{}, normal)) / ofRegion_.size;
    space_.limits.push_back({reach(hull_, normal), normal.x, normal.y, limit, equal});
  }

  void addObstacles(const Holed& region) {
    std::vector<Polygon> shapes = pocketsOf(region.outer, hull(region.outer.points));
    shapes.insert(shapes.end(), region.holes.begin(), region.holes.end());
    if (question_.margin > 0 && !shapes.empty()) shapes = grownBevelled(shapes, question_.margin);
    for (const Polygon& shape : shapes)
      for (Polygon& piece : convexPieces(ofRegion_.into(shape)))
        space_.obstacles.push_back(std::move(piece));
  }

  Fit fitOf(const ScaleAndMove& at) const {
    Fit out;
    out.scale = at.s * unit();
    const Vector toMiddle{ofRegion_.middle.x + at.x * ofRegion_.size,
                          ofRegion_.middle.y + at.y * ofRegion_.size};
    out.move = toMiddle - (ofFigure_.middle - Point{}) * out.scale;
    out.mirrored = mirror_;
    return out;
  }

  const FitQuestion& question_;
  bool mirror_;
  Frame ofFigure_, ofRegion_;
  std::vector<Polygon> figure_;
  Polygon hull_;
  FitSpace space_;
};

}  // namespace

Polygon Fit::placed(const Polygon& polygon) const {
  Polygon out;
  for (const Point& p : polygon.points) out.points.push_back(placed(p));
  return out;
}

Fit largestFit(const FitQuestion& question) {
  FitQuestion asked = question;
  std::erase_if(asked.figure, [](const Polygon& p) { return p.points.size() < 3; });
  ensure(!asked.figure.empty(), "a figure to fit has an outline");
  Fit best;
  double most = 0;
  for (const Holed& part : holedOutlines(asked.region)) {
    if (part.outer.points.size() < 3) continue;
    for (const bool mirror : {false, true}) {
      if (mirror && !asked.mayMirror) continue;
      const Found found = Fitting(asked, part, mirror).run(best.scale * (1 + kSameScale));
      if (found.fit.scale > best.scale) best = found.fit;
      most = std::max(most, found.most);
    }
  }
  if (best.scale > 0 && most > best.scale * (1 + 2 * kSameScale))
    best.within = most / best.scale - 1;
  return best;
}

}  // namespace tw
