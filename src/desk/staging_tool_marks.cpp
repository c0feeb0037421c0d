#include "desk/staging_tool_marks.h"

#include <QPainter>
#include <QPainterPath>

#include <cmath>

#include "desk/look.h"

namespace tw {

namespace {

constexpr double kSizePx = 7, kHeldPx = 10;
constexpr double kLinePx = 2, kEdgePx = 5;

QPolygonF regular(int corners, double radius, double turnDeg) {
  QPolygonF out;
  for (int i = 0; i < corners; ++i) {
    const double angle = (turnDeg + 360.0 * i / corners) * 3.14159265358979 / 180;
    out << QPointF(radius * std::cos(angle), radius * std::sin(angle));
  }
  return out;
}

/// Hands are round, feet square, the hips a diamond, the head a large ring, the gaze a triangle,
/// where a figure stands a flat ring, its heading an arrowhead, a thing a hexagon.
QPainterPath shapeOf(const HandleMark& mark, double r) {
  QPainterPath path;
  switch (mark.grab) {
    case Grab::LeftHand:
    case Grab::RightHand:
      path.addEllipse(QPointF(), r, r);
      break;
    case Grab::LeftFoot:
    case Grab::RightFoot:
      path.addRect(QRectF(-r, -r, 2 * r, 2 * r));
      break;
    case Grab::Head:
      path.addEllipse(QPointF(), 1.35 * r, 1.35 * r);
      path.addEllipse(QPointF(), 0.35 * r, 0.35 * r);
      break;
    case Grab::Pelvis:
      path.addPolygon(regular(4, 1.4 * r, 0));
      path.closeSubpath();
      break;
    case Grab::Gaze:
      path.addPolygon(regular(3, 1.35 * r, -90));
      path.closeSubpath();
      break;
    case Grab::Ground:
      path.addEllipse(QPointF(), 2.2 * r, 0.8 * r);
      path.moveTo(-0.7 * r, 0);
      path.lineTo(0.7 * r, 0);
      break;
    case Grab::Heading: {
      const QPointF way = mark.from ? mark.at - *mark.from : QPointF(0, 1);
      const double angle = std::atan2(way.y(), way.x()) * 180 / 3.14159265358979;
      path.addPolygon(regular(3, 1.3 * r, angle));
      path.closeSubpath();
      break;
    }
    case Grab::Thing:
      path.addPolygon(regular(6, 1.25 * r, 30));
      path.closeSubpath();
      break;
  }
  return path;
}

bool isFilled(Grab grab) {
  return grab == Grab::LeftHand || grab == Grab::LeftFoot || grab == Grab::Heading;
}

}  // namespace

void drawHandle(QPainter& painter, const HandleMark& mark) {
  const DeskColours& day = coloursOf(DeskLight::Day);  // paper is white by night as well
  const double r = mark.isHeld || mark.isHovered ? kHeldPx : mark.isOther ? 5 : kSizePx;
  const QColor colour = mark.isHeld ? day.warn : day.accent;
  painter.save();
  if (mark.from) {
    painter.setPen(QPen(QColor(255, 255, 255, 210), kEdgePx));
    painter.drawLine(*mark.from, mark.at);
    painter.setPen(QPen(colour, 1.4, mark.grab == Grab::Gaze ? Qt::DotLine : Qt::SolidLine));
    painter.drawLine(*mark.from, mark.at);
  }
  painter.translate(mark.at);
  const QPainterPath shape = shapeOf(mark, r);
  painter.setBrush(Qt::NoBrush);
  painter.setPen(QPen(QColor(255, 255, 255, 225), kEdgePx));
  painter.drawPath(shape);
  QColor fill = isFilled(mark.grab) ? colour : QColor(255, 255, 255, 150);
  if (mark.isHidden) fill.setAlpha(60);
  if (mark.isHeld) fill.setAlpha(isFilled(mark.grab) ? 120 : 90);  // what it holds must be seen
  painter.setBrush(fill);
  painter.setPen(QPen(colour, mark.isHeld ? kLinePx + 0.8 : kLinePx,
                      mark.isHidden ? Qt::DashLine : Qt::SolidLine));
  painter.drawPath(shape);
  if (mark.isPinned) {  // a cross over it: it stays
    painter.setPen(QPen(day.ink, 2.4));
    painter.drawLine(QPointF(-1.5 * r, -1.5 * r), QPointF(1.5 * r, 1.5 * r));
    painter.drawLine(QPointF(-1.5 * r, 1.5 * r), QPointF(1.5 * r, -1.5 * r));
  }
  painter.restore();
}

void drawBone(QPainter& painter, const QPolygonF& line, double strength) {
  if (line.size() < 2) return;
  QColor colour = coloursOf(DeskLight::Day).accent;
  colour.setAlphaF(static_cast<float>(strength));
  painter.setBrush(Qt::NoBrush);
  painter.setPen(QPen(QColor(255, 255, 255, static_cast<int>(150 * strength)), 3.5));
  painter.drawPolyline(line);
  painter.setPen(QPen(colour, 1.3));
  painter.drawPolyline(line);
}

void drawPivot(QPainter& painter, QPointF at) {
  const QColor colour = coloursOf(DeskLight::Day).warn;
  for (const auto& [width, ink] :
       {std::pair{5.0, QColor(255, 255, 255, 225)}, std::pair{2.0, colour}}) {
    painter.setPen(QPen(ink, width));
    painter.setBrush(Qt::NoBrush);
    painter.drawEllipse(at, 9, 9);
    for (const QPointF way : {QPointF(1, 0), QPointF(-1, 0), QPointF(0, 1), QPointF(0, -1)})
      painter.drawLine(at + 5 * way, at + 16 * way);
  }
}

const std::vector<std::vector<Joint>>& boneChains() {
  using enum Joint;
  static const std::vector<std::vector<Joint>> chains{
      {Crown, Head, Neck, Chest, Waist, Pelvis},
      {LeftShoulder, LeftElbow, LeftWrist, LeftFingertip},
      {RightShoulder, RightElbow, RightWrist, RightFingertip},
      {LeftShoulder, Neck, RightShoulder},
      {LeftHip, LeftKnee, LeftAnkle, LeftToe},
      {RightHip, RightKnee, RightAnkle, RightToe},
      {LeftHip, Pelvis, RightHip}};
  return chains;
}

}  // namespace tw
