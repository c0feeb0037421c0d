#include "desk/painter_surface.h"

#include <QPainter>
#include <QPainterPath>
#include <QPen>

namespace tw {

namespace {

QPointF pointOf(Point p) {
  return {p.x, p.y};
}

}  // namespace

QColor colourOf(Ink ink) {
  return QColor::fromRgbF(static_cast<float>(ink.red), static_cast<float>(ink.green),
                          static_cast<float>(ink.blue));
}

QPainterPath painterPath(const Path& path, FillRule rule) {
  QPainterPath out;
  out.setFillRule(rule == FillRule::EvenOdd ? Qt::OddEvenFill : Qt::WindingFill);
  const Point* p = path.points().data();
  for (const Path::Step step : path.steps()) switch (step) {
      case Path::Step::Move:
        out.moveTo(pointOf(*p++));
        break;
      case Path::Step::Line:
        out.lineTo(pointOf(*p++));
        break;
      case Path::Step::Curve:
        out.cubicTo(pointOf(p[0]), pointOf(p[1]), pointOf(p[2]));
        p += 3;
        break;
      case Path::Step::Close:
        out.closeSubpath();
        break;
    }
  return out;
}

PainterSurface::PainterSurface(QPainter& painter, const Typesetter& typesetter)
    : painter_(painter), typesetter_(typesetter) {
  painter_.setRenderHint(QPainter::Antialiasing);
}

void PainterSurface::fill(const Path& path, Ink ink, FillRule rule) {
  painter_.fillPath(painterPath(path, rule), colourOf(ink));
}

void PainterSurface::line(const Path& path, const Pen& pen) {
  QPen own(colourOf(pen.ink), pen.width, Qt::SolidLine, pen.round ? Qt::RoundCap : Qt::FlatCap,
           pen.round ? Qt::RoundJoin : Qt::MiterJoin);
  if (!pen.dashes.empty()) {  // Qt counts dashes in widths of the pen
    QList<qreal> dashes;
    for (const double mm : pen.dashes) dashes.append(mm / pen.width);
    own.setDashPattern(dashes);
  }
  painter_.strokePath(painterPath(path), own);
}

void PainterSurface::clip(const Path& path, FillRule rule) {
  painter_.save();
  painter_.setClipPath(painterPath(path, rule), Qt::IntersectClip);
}

void PainterSurface::unclip() {
  painter_.restore();
}

void PainterSurface::type(const TypeLine& line) {
  fill(typesetter_.outlines(line), line.ink, FillRule::NonZero);
}

void PainterSurface::place(const Sketch& sketch, double scale, Point at) {
  painter_.save();
  painter_.translate(at.x, at.y);
  painter_.scale(scale, scale);
  clip(Path(sketch.bounds()), FillRule::NonZero);
  sketch.drawOn(*this, kFinestMm / scale);
  unclip();
  painter_.restore();
}

}  // namespace tw
