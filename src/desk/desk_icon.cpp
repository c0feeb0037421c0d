#include "desk/desk_icon.h"

#include <QPainter>
#include <QPainterPath>
#include <QPixmap>

namespace tw {

namespace {

/// On a square of 64.
void drawMark(QPainter& painter) {
  painter.setRenderHint(QPainter::Antialiasing);
  painter.setPen(Qt::NoPen);
  painter.setBrush(QColor(0xf4, 0xf2, 0xec));
  painter.drawRoundedRect(QRectF(8, 3, 48, 58), 2, 2);
  painter.setBrush(QColor(0x1d, 0x23, 0x26));
  for (const QRectF& panel : {QRectF(12, 7, 18, 15), QRectF(33, 7, 19, 15), QRectF(12, 25, 40, 9),
                              QRectF(12, 37, 40, 20)})
    painter.drawRect(panel);
  QPainterPath way;
  way.moveTo(17, 14);
  way.lineTo(45, 15);
  way.cubicTo(56, 24, 10, 26, 20, 33);
  way.cubicTo(26, 38, 40, 36, 42, 48);
  painter.setBrush(Qt::NoBrush);
  painter.setPen(QPen(QColor(0xe8, 0x7b, 0x35), 3, Qt::SolidLine, Qt::RoundCap));
  painter.drawPath(way);
  painter.setPen(Qt::NoPen);
  painter.setBrush(QColor(0xe8, 0x7b, 0x35));
  painter.drawEllipse(QPointF(42, 48), 4, 4);
}

}  // namespace

QIcon deskIcon() {
  QIcon icon;
  for (const int side : {16, 24, 32, 48, 64, 96, 128, 256}) {
    QPixmap pixmap(side, side);
    pixmap.fill(Qt::transparent);
    QPainter painter(&pixmap);
    painter.scale(side / 64.0, side / 64.0);
    drawMark(painter);
    painter.end();
    icon.addPixmap(pixmap);
  }
  return icon;
}

}  // namespace tw
