// A pen's pressure.
//
// width = base · weight · shadow side · nearness · fold · pressure · end, where
//   shadow side  from 0.7 (outline turned to the light) to 1.45 (turned away: the underside),
//   nearness     (middle depth / depth)^0.4, between 0.6 and 1.5,
//   fold         contours with little behind them are lighter than those against open ground,
//   pressure     ±12 % slow waves along the line, from the line's own place: no two alike,
//   end          rises over the first millimetres and falls over the last.
// Common practice, no source. A line that goes behind something stops kBehindGapMm short of it.
#include "stage/pen.h"

#include <algorithm>
#include <cmath>

namespace tw {

namespace {

constexpr double kBehindGapMm = 0.5;
constexpr double kSpacingMm = 0.3;  // between a stroke's points
constexpr double kTaperMm = 3.0;
constexpr double kThinEnd = 0.3;     // of the full width
constexpr double kSteadyEnd = 0.75;  // where the line only goes behind something
constexpr double kThinnestMm = 0.06;

double smoothStep(double t) {
  t = std::clamp(t, 0.0, 1.0);
  return t * t * (3 - 2 * t);
}

double shadowSide(Vector outward, Vector towardLight) {
  const double away = (1 - dot(outward, towardLight)) / 2;
  return 0.68 + 0.8 * away;
}

double foldFactor(const SeenPoint& p, LineKind kind) {
  if (kind == LineKind::Crease) return 0.75;
  // 2 cm of step is a hint of a fold, 25 cm is one thing before another.
  return 0.55 + 0.45 * smoothStep((p.gap - 0.02) / 0.23);
}

/// Slow waves whose phase comes from where the line starts.
double pressure(double alongMm, Point start) {
  const double phase = start.x * 1.7 + start.y * 2.3;
  return 1 + 0.08 * std::sin(alongMm / 4.1 + phase) + 0.04 * std::sin(alongMm / 1.7 + 2 * phase);
}

double endFactor(double distance, double taper, LineEnd end) {
  if (end == LineEnd::Frame) return 1;
  const double least = end == LineEnd::Behind ? kSteadyEnd : kThinEnd;
  return least + (1 - least) * smoothStep(distance / taper);
}

/// Points from `from` to `to` (mm along), evenly spaced, by linear interpolation.
std::vector<SeenPoint> spaced(const std::vector<SeenPoint>& in, double from, double to) {
  std::vector<SeenPoint> out;
  const int count = std::max(1, static_cast<int>(std::ceil((to - from) / kSpacingMm)));
  double along = 0;
  std::size_t i = 1;
  for (int k = 0; k <= count; ++k) {
    const double want = from + (to - from) * k / count;
    while (i + 1 < in.size() && along + (in[i].at - in[i - 1].at).length() < want) {
      along += (in[i].at - in[i - 1].at).length();
      ++i;
    }
    const double piece = (in[i].at - in[i - 1].at).length();
    const double t = piece > 0 ? std::clamp((want - along) / piece, 0.0, 1.0) : 0;
    SeenPoint p = in[i];
    p.at = between(in[i - 1].at, in[i].at, t);
    out.push_back(p);
  }
  return out;
}

}  // namespace

std::optional<Stroke> inked(const SeenLine& line, const Pen& pen) {
  SeenLine whole = line;
  if (whole.closed) whole.points.push_back(whole.points.front());
  const double length = lengthOf(whole);
  const double gap = std::min(kBehindGapMm, 0.2 * length);
  const double from = !line.closed && line.first == LineEnd::Behind ? gap : 0;
  const double to = length - (!line.closed && line.last == LineEnd::Behind ? gap : 0);
  if (line.points.size() < 2 || to - from < 0.4) return std::nullopt;
  Stroke stroke;
  stroke.darkness = pen.darkness;
  const double taper = std::min(kTaperMm, (to - from) / 2.5);
  const std::vector<SeenPoint> points = spaced(whole.points, from, to);
  for (std::size_t i = 0; i < points.size(); ++i) {
    const SeenPoint& p = points[i];
    const double along = (to - from) * static_cast<double>(i) /
                         static_cast<double>(std::max<std::size_t>(1, points.size() - 1));
    double width = pen.baseMm * pen.weight * shadowSide(p.outward, pen.towardLight) *
                   foldFactor(p, line.kind) *
                   std::clamp(std::pow(pen.middleDepth / p.depth, 0.4), 0.6, 1.5);
    if (!line.closed)
      width *= pressure(along, points.front().at) * endFactor(along, taper, line.first) *
               endFactor(to - from - along, taper, line.last);
    stroke.points.push_back(p.at);
    stroke.widths.push_back(std::max(kThinnestMm, width));
  }
  return stroke;
}

Stroke drawnLine(const std::vector<Point>& points, double widthMm, double darkness,
                 double taperMm) {
  Stroke stroke;
  stroke.points = points;
  stroke.darkness = darkness;
  std::vector<double> along{0};
  for (std::size_t i = 1; i < points.size(); ++i)
    along.push_back(along.back() + (points[i] - points[i - 1]).length());
  const double length = along.back(), taper = std::min(taperMm, length / 2.5);
  for (const double a : along)
    stroke.widths.push_back(std::max(kThinnestMm, widthMm * pressure(a, points.front()) *
                                                      endFactor(a, taper, LineEnd::Free) *
                                                      endFactor(length - a, taper, LineEnd::Free)));
  return stroke;
}

}  // namespace tw
