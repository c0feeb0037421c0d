#include "desk/pin_shape.h"

#include <QPainter>
#include <QPainterPath>

namespace tw {

void drawPin(QPainter& painter, QPointF middle, bool driven, const QColor& colour, double size) {
  QPainterPath nail;
  nail.addRoundedRect(QRectF(-6.5, -kPinPx, 13, 5), 1.5, 1.5);  // its head
  nail.moveTo(-2.6, -4);
  nail.lineTo(2.6, -4);
  nail.lineTo(0.9, kPinPx);
  nail.lineTo(-0.9, kPinPx);
  nail.closeSubpath();
  nail.setFillRule(Qt::WindingFill);
  painter.save();
  painter.setRenderHint(QPainter::Antialiasing);
  painter.translate(middle);
  painter.scale(size, size);
  painter.strokePath(
      nail, QPen(QColor(255, 255, 255, 230), 4, Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin));
  painter.fillPath(nail, driven ? colour : QColor(255, 255, 255));
  painter.strokePath(nail, QPen(colour, 1.4));
  painter.restore();
}

}  // namespace tw
