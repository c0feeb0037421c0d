#include "press/finding_mark.h"

#include <fmt/format.h>

#include "geometry/polygon.h"
#include "press/overlays.h"

namespace tw {

namespace {

constexpr double kNumberPt = 6.6, kLongNumberPt = 6;

Polygon diamond(Point at, double r) {
  return {{at + Vector{0, -r}, at + Vector{r, 0}, at + Vector{0, r}, at + Vector{-r, 0}}};
}

Polygon shapeOf(Severity severity, Point at) {
  constexpr double r = kFindingMarkMm;
  if (severity == Severity::Must) return diamond(at, 1.35 * r);
  if (severity == Severity::Should) return polygonOf({at - Vector{r, r}, at + Vector{r, r}});
  return ellipse(at, 1.1 * r, 1.1 * r, 32);
}

}  // namespace

void drawFindingMark(Surface& surface, Point at, Severity severity, std::size_t number,
                     bool silenced) {
  const Ink ink = silenced ? greyOf(0.45) : severity == Severity::Must ? kLeadInk : kOrderInk;
  const Path shape(shapeOf(severity, at));
  const bool open = severity == Severity::Look;
  surface.line(shape, {.ink = kPaper, .width = 1});
  surface.fill(shape, open ? kPaper : ink, FillRule::NonZero);
  surface.line(shape, {.ink = ink, .width = 0.35});
  if (number == 0) return;
  const double size = number < 100 ? kNumberPt : kLongNumberPt;
  surface.type({.text = fmt::format("{}", number),
                .face = Face::Bold,
                .sizePt = size,
                .at = at + Vector{0, 0.35 * size * kMmPerPt},
                .align = Align::Centre,
                .ink = open ? ink : kPaper});
}

}  // namespace tw
