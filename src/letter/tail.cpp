// Tails.
//
// Idea. A tail leaves the balloon on the line from its middle to the mouth, so that it points even
// where it is short, and runs a little more than half the way (facts, trade source). A wedge leaves
// the balloon a little more upright and bends into that line. Its base lies inside the balloon,
// so that the two outlines unite without a seam. Thoughts take a string of shrinking bubbles that
// just touch, which keeps the tail one outline (common practice has them apart).

#include "letter/tail.h"

#include <algorithm>
#include <array>
#include <numbers>

#include "base/random.h"
#include "geometry/polygon.h"

namespace tw {
namespace {

/// Width of a tail where it leaves the balloon, mm: narrow on small balloons, by eye.
double baseWidth(const BalloonShape& shape) {
  return std::clamp(0.28 * std::min(shape.a, shape.b), 1.4, 3.2);
}

/// A thought's tail: bubbles that shrink toward the thinker, just touching, as one outline.
Polygon bubbles(const TailLine& line, double width) {
  const Vector way = line.to - line.from;
  const double length = way.length();
  std::vector<Polygon> circles;
  double radius = std::min(width * 0.62, std::max(0.5, length * 0.25)), at = radius * 0.5;
  while (at + radius * 0.5 < length && radius > 0.3) {
    circles.push_back(ellipse(line.from + way * (at / length), radius * 1.15, radius, 20));
    const double next = radius * 0.72;
    at += (radius + next) * 0.92;
    radius = next;
  }
  if (circles.empty()) return {};
  const Region joined = united(circles);
  return joined.empty() ? Polygon{} : joined.front();
}

Vector turned(Vector v, double angle) {
  const double c = std::cos(angle), s = std::sin(angle);
  return {v.x * c - v.y * s, v.x * s + v.y * c};
}

/// Where a bent tail leaves the balloon: from the straight way toward the balloon's middle top or
/// bottom, never so far that the tail would lie along the outline.
Vector leavingDirection(const BalloonShape& shape, const TailLine& line, Vector straight,
                        double bend) {
  constexpr double kMostTurn = 0.42, kMostShift = 0.35;  // radians; share of the tail's length
  const double upright = straight.y < 0 ? -1 : 1;
  const double away = std::atan2(straight.x, straight.y * upright);  // from the vertical
  const double most = std::min(kMostTurn, std::atan(kMostShift * line.length() /
                                                    std::max(0.1, shape.radiusToward(straight))));
  const double angle = std::clamp(away, -most, most) * bend * upright;
  return turned(straight, angle);
}

/// A wedge that leaves the balloon more upright than it arrives, as a pen would flick it; its last
/// part lies on the line to the mouth.
Polygon wedge(const BalloonShape& shape, Point middle, const TailLine& line, double bend) {
  constexpr int kSteps = 10;
  const Vector straight = (line.to - middle).unit();
  const Vector out = leavingDirection(shape, line, straight, bend);
  const Point edge = middle + out * shape.radiusToward(out);
  const Point root = between(edge, middle, 0.25);
  const Point knee = line.to - straight * (0.55 * line.length());
  const double width = baseWidth(shape);
  std::vector<Point> left, right;
  for (int i = 0; i <= kSteps; ++i) {
    const double t = static_cast<double>(i) / kSteps;
    const Point axis = between(between(root, knee, t), between(knee, line.to, t), t);
    const Vector along = (knee - root) * (1 - t) + (line.to - knee) * t;
    const Vector side = Vector{-along.y, along.x}.unit();
    const double half = width / 2 * (1 - t) + 0.02;
    left.push_back(axis + side * half);
    right.push_back(axis - side * half);
  }
  left.insert(left.end(), right.rbegin(), right.rend());
  return {std::move(left)};
}

}  // namespace

TailLine tailLine(const BalloonShape& shape, Point middle, Point mouth, double share) {
  const Vector way = mouth - middle;
  const double edge = shape.radiusToward(way);
  const double gap = std::max(0.0, way.length() - edge);
  const Vector d = way.unit();
  return {middle + d * edge, middle + d * (edge + gap * share)};
}

Polygon tailOutline(const BalloonShape& shape, Point middle, const TailLine& line, double bend) {
  if (line.length() < 0.3) return {};
  if (shape.kind == CopyKind::Thought) {
    const Vector d = (line.to - line.from).unit();
    return bubbles({line.from + d * (shape.reach * 0.8), line.to}, baseWidth(shape) + 1);
  }
  return wedge(shape, middle, line, bend);
}

Polygon bridge(const BalloonShape& a, Point aMiddle, const BalloonShape& b, Point bMiddle) {
  const Vector way = bMiddle - aMiddle;
  const Vector d = way.unit(), side{-d.y, d.x};
  const Point from = aMiddle + d * (a.radiusToward(d) * 0.8);
  const Point to = bMiddle - d * (b.radiusToward(d) * 0.8);
  const double half = std::max(baseWidth(a), baseWidth(b)) * 0.55;
  const Point waist = between(from, to, 0.5);
  return {{from + side * half, waist + side * (half * 0.7), to + side * half, to - side * half,
           waist - side * (half * 0.7), from - side * half}};
}

}  // namespace tw
