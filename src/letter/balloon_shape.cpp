// Outlines.
//
// Idea. A superellipse holds a lens of lines with less waste than an ellipse. Speech takes a fuller
// exponent in each quarter, by the seed of its text, so that no two balloons are the same machine
// curve and none bites into its type. Clouds and bursts put bumps or spikes on the plain core,
// evenly along its length, so that the core's promise to hold the lines stays true. Cost: some ten
// microseconds per outline; made for placed balloons only. Source: superellipse and its figures,
// facts on lettering (computed); bumps and spikes are common practice, no source.

#include "letter/balloon_shape.h"

#include <algorithm>
#include <array>
#include <numbers>

#include "base/random.h"
#include "geometry/polygon.h"

namespace tw {
namespace {

constexpr int kCorners = 64;
/// Each quarter's exponent may be fuller than the core's by this much: a hand-drawn look that
/// never bites into the type.
constexpr double kFuller = 0.3;
constexpr int kStrips = 7;

double sgn(double v) {
  return v < 0 ? -1 : 1;
}

Point onSuperellipse(double angle, double a, double b, double exponent) {
  const double c = std::cos(angle), s = std::sin(angle);
  return {a * sgn(c) * std::pow(std::abs(c), 2 / exponent),
          b * sgn(s) * std::pow(std::abs(s), 2 / exponent)};
}

std::vector<Point> organic(const BalloonShape& shape) {
  Random random(shape.seed);
  std::array<double, 4> exponents{};
  for (double& e : exponents) e = kBalloonExponent + kFuller * random.uniform();
  std::vector<Point> points;
  for (int i = 0; i < kCorners; ++i) {
    const double angle = 2 * std::numbers::pi * i / kCorners;
    points.push_back(onSuperellipse(angle, shape.a, shape.b, exponents[i * 4 / kCorners]));
  }
  return points;
}

/// Points about `step` mm apart along the core, at least `least` of them.
std::vector<Point> evenlyAlong(const BalloonShape& shape, double step, int least) {
  constexpr int kFine = 720;
  std::vector<Point> fine;
  std::vector<double> length{0};
  for (int i = 0; i <= kFine; ++i) {
    const double angle = 2 * std::numbers::pi * i / kFine;
    fine.push_back(onSuperellipse(angle, shape.a, shape.b, kBalloonExponent));
    if (i > 0) length.push_back(length.back() + (fine[i] - fine[i - 1]).length());
  }
  const int count = std::max(least, static_cast<int>(std::lround(length.back() / step)));
  std::vector<Point> points;
  std::size_t k = 0;
  for (int i = 0; i < count; ++i) {
    const double at = length.back() * i / count;
    while (length[k + 1] < at) ++k;
    points.push_back(fine[k]);
  }
  return points;
}

/// Round bumps between points on the core.
std::vector<Point> cloud(const BalloonShape& shape) {
  constexpr int kPerBump = 7;
  const std::vector<Point> cusps = evenlyAlong(shape, shape.reach * 3.6, 9);
  std::vector<Point> points;
  for (std::size_t i = 0; i < cusps.size(); ++i) {
    const Point from = cusps[i], to = cusps[(i + 1) % cusps.size()];
    const Vector chord = to - from;
    const Vector out = Vector{chord.y, -chord.x}.unit();
    for (int j = 0; j < kPerBump; ++j) {
      const double t = static_cast<double>(j) / kPerBump;
      const double bow = std::sqrt(std::max(0.0, 1 - (2 * t - 1) * (2 * t - 1)));
      points.push_back(from + chord * t + out * (bow * shape.reach * 0.95));
    }
  }
  return points;
}

/// Spikes of uneven length between points on the core.
std::vector<Point> burst(const BalloonShape& shape) {
  Random random(shape.seed);
  const std::vector<Point> notches = evenlyAlong(shape, shape.reach * 2.2, 12);
  std::vector<Point> points;
  for (std::size_t i = 0; i < notches.size(); ++i) {
    const Point from = notches[i], to = notches[(i + 1) % notches.size()];
    const Point tip = between(from, to, 0.35 + 0.3 * random.uniform());
    const Vector out = Vector{tip.x / (shape.a * shape.a), tip.y / (shape.b * shape.b)}.unit();
    points.push_back(from);
    points.push_back(tip + out * (shape.reach * (0.6 + 0.4 * random.uniform())));
  }
  return points;
}

std::vector<Point> boxPoints(double a, double b) {
  return {{-a, -b}, {a, -b}, {a, b}, {-a, b}};
}

}  // namespace

double halfWidthAt(double y, double a, double b, double exponent) {
  const double rest = 1 - std::pow(std::min(1.0, std::abs(y / b)), exponent);
  return a * std::pow(std::max(0.0, rest), 1 / exponent);
}

bool BalloonShape::isBalloon() const {
  return kind == CopyKind::Speech || kind == CopyKind::Whisper || kind == CopyKind::Shout ||
         kind == CopyKind::Thought;
}

double BalloonShape::radiusToward(Vector direction) const {
  const Vector d = direction.unit();
  if (d == Vector{}) return 0;
  if (!isBalloon()) {
    return std::min(d.x != 0 ? a / std::abs(d.x) : 1e300, d.y != 0 ? b / std::abs(d.y) : 1e300);
  }
  return std::pow(
      std::pow(std::abs(d.x / a), kBalloonExponent) + std::pow(std::abs(d.y / b), kBalloonExponent),
      -1 / kBalloonExponent);
}

Polygon outlineOf(const BalloonShape& shape, Point middle) {
  if (shape.isFree()) return {};
  std::vector<Point> points = shape.kind == CopyKind::Thought   ? cloud(shape)
                              : shape.kind == CopyKind::Shout   ? burst(shape)
                              : shape.kind == CopyKind::Caption ? boxPoints(shape.a, shape.b)
                                                                : organic(shape);
  for (Point& p : points) p = middle + (p - Point{});
  return {std::move(points)};
}

std::vector<Rect> stripsOf(const BalloonShape& shape) {
  const double a = shape.halfWidth(), b = shape.halfHeight();
  if (!shape.isBalloon()) return {{{-a, -b}, {a, b}}};
  std::vector<Rect> strips;
  for (int i = 0; i < kStrips; ++i) {
    const double top = b * (2.0 * i / kStrips - 1), bottom = b * (2.0 * (i + 1) / kStrips - 1);
    const double nearest = top * bottom <= 0 ? 0 : std::min(std::abs(top), std::abs(bottom));
    const double half = halfWidthAt(nearest, a, b, kBalloonExponent + kFuller);
    strips.push_back({{-half, top}, {half, bottom}});
  }
  return strips;
}

std::vector<Rect> stripsOf(const Polygon& outline, int count) {
  std::vector<Rect> strips;
  const Rect box = bounds(outline);
  const std::size_t n = outline.points.size();
  for (int i = 0; i < count; ++i) {
    const double top = box.min.y + box.height() * i / count;
    const double bottom = box.min.y + box.height() * (i + 1) / count;
    double low = 1e300, high = -1e300;
    for (std::size_t k = 0; k < n; ++k) {
      Point p = outline.points[k], q = outline.points[(k + 1) % n];
      if (p.y > q.y) std::swap(p, q);
      if (q.y < top || p.y > bottom) continue;
      for (const double y : {std::max(p.y, top), std::min(q.y, bottom)}) {
        const double x = q.y > p.y ? p.x + (q.x - p.x) * (y - p.y) / (q.y - p.y) : q.x;
        low = std::min({low, x, q.y > p.y ? x : p.x});
        high = std::max({high, x, q.y > p.y ? x : p.x});
      }
    }
    if (high > low) strips.push_back({{low, top}, {high, bottom}});
  }
  return strips;
}

}  // namespace tw
