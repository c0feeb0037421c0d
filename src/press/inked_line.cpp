// Thinning is Douglas and Peucker's (1973) on points (x, y, half width): a stretch may be replaced
// by its chord when every point left out lies within the tolerance of it, counting the change of
// the half width as well. Cost: n log n for lines as people draw them, n² at worst.
#include "press/inked_line.h"

#include <algorithm>
#include <cmath>

#include "base/result.h"
#include "geometry/polygon.h"

namespace tw {

namespace {

/// How far the point i is from what the chord a–b would draw there.
double strayOf(const Stroke& s, std::size_t a, std::size_t b, std::size_t i) {
  const Vector chord = s.points[b] - s.points[a];
  const Vector here = s.points[i] - s.points[a];
  const double square = dot(chord, chord);
  const double share = square > 0 ? std::clamp(dot(here, chord) / square, 0.0, 1.0) : 0;
  const Vector off = here - chord * share;
  const double aside = std::sqrt(dot(off, off));
  const double width = s.widths[a] + (s.widths[b] - s.widths[a]) * share;
  return aside + std::abs(s.widths[i] - width) / 2;
}

std::vector<bool> keptPoints(const Stroke& s, double tolerance) {
  std::vector<bool> kept(s.points.size(), false);
  kept.front() = kept.back() = true;
  std::vector<std::pair<std::size_t, std::size_t>> open{{0, s.points.size() - 1}};
  while (!open.empty()) {
    const auto [a, b] = open.back();
    open.pop_back();
    std::size_t worst = a;
    double stray = tolerance;
    for (std::size_t i = a + 1; i < b; ++i) {
      const double d = strayOf(s, a, b, i);
      if (d > stray) {
        stray = d;
        worst = i;
      }
    }
    if (worst == a) continue;
    kept[worst] = true;
    open.push_back({a, worst});
    open.push_back({worst, b});
  }
  return kept;
}

/// Leaves out points that say nothing beyond their neighbours, in one pass.
std::vector<Point> sparse(const std::vector<Point>& points, double tolerance) {
  std::vector<Point> out;
  out.reserve(points.size());
  for (std::size_t i = 0; i < points.size(); ++i) {
    if (i > 0 && i + 1 < points.size()) {
      const Vector chord = points[i + 1] - out.back();
      const Vector here = points[i] - out.back();
      const double length = chord.length();
      if (length > 0 && std::abs(cross(chord, here)) < tolerance * length &&
          dot(here, chord) >= 0 && dot(here, chord) <= length * length)
        continue;
    }
    out.push_back(points[i]);
  }
  return out;
}

Path pathOf(const Region& region, double tolerance) {
  Path path;
  for (const Polygon& polygon : region) path.add(simplified(polygon.points, tolerance), true);
  return path;
}

}  // namespace

Stroke thinned(const Stroke& stroke, double tolerance) {
  ensure(stroke.points.size() == stroke.widths.size(), "a stroke has one width per point");
  if (stroke.points.size() < 3) return stroke;
  const std::vector<bool> kept = keptPoints(stroke, tolerance);
  Stroke out;
  out.darkness = stroke.darkness;
  for (std::size_t i = 0; i < stroke.points.size(); ++i) {
    if (!kept[i]) continue;
    out.points.push_back(stroke.points[i]);
    out.widths.push_back(stroke.widths[i]);
  }
  return out;
}

void drawPicture(Surface& surface, const Drawing& drawing, double tolerance) {
  for (const Tone& tone : drawing.tones)
    surface.fill(pathOf(tone.region, tolerance), greyOf(tone.darkness), FillRule::EvenOdd);
  // Outlines of strokes wind the same way wherever they overlap, so many make one fill.
  Path run;
  for (std::size_t i = 0; i < drawing.strokes.size(); ++i) {
    const Stroke& stroke = drawing.strokes[i];
    run.add(sparse(outlineOf(thinned(stroke, tolerance)).points, tolerance / 2), true);
    const bool last =
        i + 1 == drawing.strokes.size() || drawing.strokes[i + 1].darkness != stroke.darkness;
    if (!last) continue;
    surface.fill(run, greyOf(stroke.darkness), FillRule::NonZero);
    run = Path();
  }
}

}  // namespace tw
