// Booleans and offsets by Clipper (docs/decisions/0003-clipper.md), on a grid of 1/10000 mm.
#include <cmath>
#include <polyclipping/clipper.hpp>

#include "geometry/polygon.h"

namespace tw {

namespace {

constexpr double kGridPerMm = 1e4;
// Rounded corners of offsets may leave the true arc by this much: 1/200 mm is below any printer.
constexpr double kArcToleranceMm = 0.005;

ClipperLib::Path toGrid(const Polygon& polygon) {
  ClipperLib::Path out;
  out.reserve(polygon.points.size());
  for (const Point& p : polygon.points)
    out.emplace_back(std::llround(p.x * kGridPerMm), std::llround(p.y * kGridPerMm));
  return out;
}

ClipperLib::Paths toGrid(const Region& region) {
  ClipperLib::Paths out;
  for (const Polygon& polygon : region) out.push_back(toGrid(polygon));
  return out;
}

Region fromGrid(const ClipperLib::Paths& paths) {
  Region out;
  for (const ClipperLib::Path& path : paths) {
    Polygon polygon;
    polygon.points.reserve(path.size());
    for (const ClipperLib::IntPoint& p : path)
      polygon.points.push_back(
          {static_cast<double>(p.X) / kGridPerMm, static_cast<double>(p.Y) / kGridPerMm});
    out.push_back(std::move(polygon));
  }
  return out;
}

Region combined(ClipperLib::ClipType how, const Region& a, const Region& b,
                ClipperLib::PolyFillType fill) {
  ClipperLib::Clipper clipper;
  clipper.AddPaths(toGrid(a), ClipperLib::ptSubject, true);
  clipper.AddPaths(toGrid(b), ClipperLib::ptClip, true);
  ClipperLib::Paths out;
  clipper.Execute(how, out, fill, fill);
  return fromGrid(out);
}

/// Clipper's non-zero rule needs one orientation; artists' outlines promise none.
Polygon counterClockwise(const Polygon& polygon) {
  ClipperLib::Path path = toGrid(polygon);
  if (ClipperLib::Orientation(path)) return polygon;
  return {{polygon.points.rbegin(), polygon.points.rend()}};
}

}  // namespace

Region united(const std::vector<Polygon>& shapes) {
  Region all;
  for (const Polygon& shape : shapes) all.push_back(counterClockwise(shape));
  return combined(ClipperLib::ctUnion, all, {}, ClipperLib::pftNonZero);
}

Region common(const Region& a, const Region& b) {
  return combined(ClipperLib::ctIntersection, a, b, ClipperLib::pftEvenOdd);
}

Region without(const Region& a, const Region& b) {
  return combined(ClipperLib::ctDifference, a, b, ClipperLib::pftEvenOdd);
}

Region offset(const Region& region, double by) {
  // One clean pass first: Clipper's offset wants holes wound against their outer outline.
  ClipperLib::Paths clean;
  ClipperLib::SimplifyPolygons(toGrid(region), clean, ClipperLib::pftEvenOdd);
  ClipperLib::ClipperOffset grower(2, kArcToleranceMm * kGridPerMm);
  grower.AddPaths(clean, ClipperLib::jtRound, ClipperLib::etClosedPolygon);
  ClipperLib::Paths out;
  grower.Execute(out, by * kGridPerMm);
  return fromGrid(out);
}

}  // namespace tw
