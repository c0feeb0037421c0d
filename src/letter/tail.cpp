// Tails.
//
// Idea. A tail leaves the balloon on the line from its middle to the mouth, so that it points even
// where it is short, and runs a little more than half the way (facts, trade source). It bows
// slightly, as a pen flicks it, but starts and ends on that line. Its base lies inside the balloon,
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

/// A wedge with a slight bow, as a pen would flick it.
Polygon wedge(const BalloonShape& shape, Point middle, const TailLine& line) {
  constexpr int kSteps = 8;
  const Vector way = line.to - line.from;
  const Vector side{-way.unit().y, way.unit().x};
  const double width = baseWidth(shape);
  const Point root = between(line.from, middle, 0.25);
  // The bow turns to the balloon's nearer end, away from the page's middle of attention.
  const double bow = way.length() * 0.07 * (way.x * way.y >= 0 ? 1 : -1);
  std::vector<Point> left, right;
  for (int i = 0; i <= kSteps; ++i) {
    const double t = static_cast<double>(i) / kSteps;
    const Point axis = between(root, line.to, t) + side * (bow * 4 * t * (1 - t));
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

Polygon tailOutline(const BalloonShape& shape, Point middle, const TailLine& line) {
  if (line.length() < 0.3) return {};
  if (shape.kind == CopyKind::Thought) {
    const Vector d = (line.to - line.from).unit();
    return bubbles({line.from + d * (shape.reach * 0.8), line.to}, baseWidth(shape) + 1);
  }
  return wedge(shape, middle, line);
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
