#include "desk/enlarged_surface.h"

#include <utility>

#include "geometry/polygon.h"

namespace tw {

namespace {

constexpr double kSmallMm = 15;        // across: a mark, not a part of the page
constexpr double kHalfCapital = 0.35;  // of the type's size, above the baseline

Path mapped(const Path& path, Point middle, double factor) {
  Path out;
  std::size_t next = 0;
  const auto take = [&] { return middle + (path.points()[next++] - middle) * factor; };
  for (const Path::Step step : path.steps()) switch (step) {
      case Path::Step::Move:
        out.moveTo(take());
        break;
      case Path::Step::Line:
        out.lineTo(take());
        break;
      case Path::Step::Curve: {
        const Point a = take(), b = take();
        out.curveTo(a, b, take());
        break;
      }
      case Path::Step::Close:
        out.close();
        break;
    }
  return out;
}

}  // namespace

Path EnlargedSurface::grown(const Path& path) const {
  if (path.isEmpty()) return path;
  const Rect box = bounds(Polygon{path.points()});
  const bool isMark = (box.max - box.min).length() < kSmallMm;
  return isMark ? mapped(path, box.centre(), factor_) : path;
}

void EnlargedSurface::fill(const Path& path, Ink ink, FillRule rule) {
  under().fill(grown(path), ink, rule);
}

void EnlargedSurface::line(const Path& path, const Pen& pen) {
  Pen own = pen;
  own.width *= factor_;
  for (double& dash : own.dashes) dash *= factor_;
  under().line(grown(path), own);
}

void EnlargedSurface::type(const TypeLine& line) {
  TypeLine own = line;
  own.sizePt *= factor_;
  own.at.y += (factor_ - 1) * kHalfCapital * line.sizePt * kMmPerPt;  // stays about its middle
  under().type(own);
}

}  // namespace tw
