// Largest scale among convex obstacles, by branch and bound over linear programs.
//
// The idea: a convex piece of the figure and a convex obstacle do not overlap just when an edge of
// one of them separates them (separating axis theorem). "Piece lies beyond this edge" is linear in
// the unknowns scale and move, because a scaled and moved support function is linear in both. So
// the question is a linear program with, for every pair, a choice of one limit out of a few.
//
// 1 Solve the program without any choice made: its scale is an upper bound.
// 2 At its solution find the pair that overlaps deepest. None overlaps: this is the largest.
// 3 Else make one program for each edge that could part the pair. The k-th also says that none of
//   the edges before it parts them, so no placement belongs to two programs.
// 4 Go on with the program that has the largest bound. The first solution without overlap is the
//   largest of all: everything still open has a smaller bound.
//
// No step asks whether a figure that fits also fits when smaller. For concave figures that is
// false (a C fits around a peg that its smaller copy cannot pass), so bisecting on the scale,
// erosion by erosion, may miss the answer; here scale is an unknown like the others. Nor is there
// a grid: exact fits count, because limits may be met with equality.
//
// Cost: programs with three unknowns, some ten for each step; the number of steps can grow like
// the cube of the pairs, and is a few dozen for silhouettes beside two or three insets. Every
// sixteenth step follows one branch to its end, so that a search that is cut short has an answer.
// Does badly: many small obstacles. When cut short, `most` says how much larger it might be.
// Source: the parting limits are those of Li and Milenkovic's compaction (1995, from memory);
// branching on them is ordinary disjunctive programming.
#include "geometry/fit_search.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <queue>

#include "geometry/polygon.h"

namespace tw {

namespace {

constexpr double kTouch = 1e-9;  // overlaps as shallow as this are touches; figure and region ~ 1
constexpr int kDiveEvery = 16;

double reach(const Polygon& polygon, Vector direction) {
  double most = -std::numeric_limits<double>::infinity();
  for (const Point& p : polygon.points) most = std::max(most, dot(p - Point{}, direction));
  return most;
}

template <class Do>
void eachNormal(const Polygon& polygon, const Do& act) {
  for (std::size_t i = 0; i < polygon.points.size(); ++i) {
    const Vector along = polygon.points[(i + 1) % polygon.points.size()] - polygon.points[i];
    if (along.length() > 1e-12) act(Vector{along.y, -along.x}.unit());
  }
}

/// One piece against one obstacle: any of the limits parts them.
struct Pair {
  std::vector<FitLimit> parting;
  Rect piece, obstacle;  ///< boxes around both

  bool isFar(const ScaleAndMove& at) const {
    return piece.max.x * at.s + at.x <= obstacle.min.x ||
           piece.min.x * at.s + at.x >= obstacle.max.x ||
           piece.max.y * at.s + at.y <= obstacle.min.y ||
           piece.min.y * at.s + at.y >= obstacle.max.y;
  }
  double overlap(const ScaleAndMove& at) const {
    if (isFar(at)) return 0;
    double least = std::numeric_limits<double>::infinity();
    for (const FitLimit& limit : parting) least = std::min(least, at.over(limit));
    return least;
  }
};

Pair pairOf(const Polygon& piece, const Polygon& obstacle) {
  Pair pair{{}, bounds(piece), bounds(obstacle)};
  const auto add = [&](Vector towardObstacle) {
    pair.parting.push_back({reach(piece, towardObstacle), towardObstacle.x, towardObstacle.y,
                            -reach(obstacle, -towardObstacle)});
  };
  eachNormal(obstacle, [&](Vector outward) { add(-outward); });
  eachNormal(piece, add);
  return pair;
}

FitLimit reversed(const FitLimit& l) {
  return {-l.s, -l.x, -l.y, -l.limit};
}

struct Open {
  std::vector<FitLimit> limits;
  ScaleAndMove at;
  int order;  ///< of making, so that equal bounds are taken in a fixed order
};

struct Smaller {
  bool operator()(const Open& a, const Open& b) const {
    return a.at.s < b.at.s || (a.at.s == b.at.s && a.order > b.order);
  }
};

class Search {
 public:
  Search(const FitSpace& space, double atLeast) : atLeast_(atLeast) {
    for (const Polygon& piece : space.pieces)
      for (const Polygon& obstacle : space.obstacles) pairs_.push_back(pairOf(piece, obstacle));
    open(space.limits, largestScale(space.limits), nullptr);
  }

  FoundFit run(int mostSteps) {
    for (int step = 0; step < mostSteps && !open_.empty(); ++step) {
      Open next = takeLargest();
      if (next.at.s <= atLeast_) return {best_, atLeast_};
      // Now and then one branch is followed to its end.
      const bool dive = step % kDiveEvery == kDiveEvery - 1;
      do {
        const Pair* pair = deepest(next.at);
        if (pair == nullptr) {
          best_ = next.at;
          atLeast_ = next.at.s;
          break;
        }
        std::optional<Open> child = branch(next, *pair, dive);
        if (!child) break;
        next = std::move(*child);
      } while (dive);
    }
    return {best_, open_.empty() ? atLeast_ : std::max(atLeast_, open_.front().at.s)};
  }

 private:
  Open takeLargest() {
    std::pop_heap(open_.begin(), open_.end(), Smaller{});
    Open next = std::move(open_.back());
    open_.pop_back();
    return next;
  }

  const Pair* deepest(const ScaleAndMove& at) const {
    const Pair* worst = nullptr;
    double most = kTouch;
    for (const Pair& pair : pairs_) {
      const double overlap = pair.overlap(at);
      if (overlap <= most) continue;
      most = overlap;
      worst = &pair;
    }
    return worst;
  }

  /// Opens a program per parting limit; when diving, gives back the one with the largest bound.
  std::optional<Open> branch(const Open& from, const Pair& pair, bool dive) {
    std::vector<FitLimit> parting = pair.parting;
    std::stable_sort(parting.begin(), parting.end(), [&](const FitLimit& a, const FitLimit& b) {
      return from.at.over(a) < from.at.over(b);
    });
    std::optional<Open> best;
    std::vector<FitLimit> limits = from.limits;
    FitProgram program(limits);
    for (const FitLimit& limit : parting) {
      limits.push_back(limit);
      program.add(limit);
      open(limits, program.largest(), dive ? &best : nullptr);
      limits.back() = reversed(limit);
      program.replaceLast(limits.back());
    }
    return best;
  }

  void open(const std::vector<FitLimit>& limits, const std::optional<ScaleAndMove>& at,
            std::optional<Open>* best) {
    if (!at || at->s <= atLeast_ + kTouch) return;
    Open made{limits, *at, made_++};
    if (best != nullptr) {
      if (!best->has_value()) {
        *best = std::move(made);
        return;
      }
      if (Smaller{}(**best, made)) std::swap(**best, made);
    }
    open_.push_back(std::move(made));
    std::push_heap(open_.begin(), open_.end(), Smaller{});
  }

  double atLeast_;
  std::vector<Pair> pairs_;
  std::vector<Open> open_;
  std::optional<ScaleAndMove> best_;
  int made_ = 0;
};

}  // namespace

FoundFit searchFit(const FitSpace& space, double atLeast, int mostSteps) {
  return Search(space, atLeast).run(mostSteps);
}

}  // namespace tw
