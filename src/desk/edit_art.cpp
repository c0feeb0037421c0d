#include "desk/edit_art.h"

#include <QCoreApplication>
#include <QPainter>
#include <QPainterPath>

#include <algorithm>
#include <set>

#include "desk/look.h"
#include "desk/page_view.h"

namespace tw {

namespace {

constexpr double kGripPx = 9, kEndPx = 12, kTipPx = 7;
constexpr double kHalo = 2;

QString tr(const char* words) {
  return QCoreApplication::translate("PageEdit", words);
}

/// Paper is white by night as well.
QColor accent() {
  return coloursOf(DeskLight::Day).accent;
}

void strokeTwice(QPainter& painter, const QPainterPath& path, QPen pen) {
  QPen halo = pen;
  halo.setColor(QColor(255, 255, 255, 215));
  halo.setWidthF(pen.widthF() + 2 * kHalo);
  halo.setStyle(Qt::SolidLine);
  painter.strokePath(path, halo);
  painter.strokePath(path, pen);
}

QPainterPath lineOf(const PageView& view, Point a, Point b) {
  QPainterPath path(view.toView(a));
  path.lineTo(view.toView(b));
  return path;
}

QPainterPath closedPath(const PageView& view, const Polygon& outline) {
  QPainterPath path;
  path.moveTo(view.toView(outline.points.front()));
  for (const Point p : outline.points) path.lineTo(view.toView(p));
  path.closeSubpath();
  return path;
}

QPainterPath diamondAt(QPointF at, double half) {
  QPainterPath path(at + QPointF(0, -half));
  path.lineTo(at + QPointF(half, 0));
  path.lineTo(at + QPointF(0, half));
  path.lineTo(at + QPointF(-half, 0));
  path.closeSubpath();
  return path;
}

/// Four arrows from the middle.
QPainterPath crossAt(QPointF at, double reach) {
  QPainterPath path;
  const double tip = reach / 3;
  for (const QPointF way : {QPointF(1, 0), QPointF(0, 1), QPointF(-1, 0), QPointF(0, -1)}) {
    const QPointF end = at + way * reach, aside(-way.y() * tip, way.x() * tip);
    path.moveTo(at);
    path.lineTo(end);
    path.moveTo(end - way * tip + aside);
    path.lineTo(end);
    path.lineTo(end - way * tip - aside);
  }
  return path;
}

QPainterPath bracket(const PageView& view, const EditHandle& handle) {
  const QPointF a = view.toView(handle.from), b = view.toView(handle.to);
  const QPointF foot(kGripPx, 0);
  QPainterPath path(a + foot);
  path.lineTo(a);
  path.lineTo(b);
  path.lineTo(b + foot);
  return path;
}

QPainterPath gripShape(const PageView& view, const EditHandle& handle) {
  const QPointF at = view.toView(handle.from);
  switch (handle.kind) {
    case HandleKind::Gutter:
    case HandleKind::Border:
      return lineOf(view, handle.from, handle.to);
    case HandleKind::GutterEnd:
      return diamondAt(at, kEndPx / 2);
    case HandleKind::Corner: {
      QPainterPath path;
      path.addRect(QRectF(at - QPointF(kGripPx / 2, kGripPx / 2), QSizeF(kGripPx, kGripPx)));
      return path;
    }
    case HandleKind::Tier:
      return bracket(view, handle);
    case HandleKind::Inset:
      return crossAt(at, 1.3 * kGripPx);
  }
  return {};
}

bool isFilled(HandleKind kind) {
  return kind == HandleKind::Corner || kind == HandleKind::GutterEnd;
}

QString panelsOf(const EditLine& line) {
  std::set<std::size_t> panels;
  for (const PanelSide& side : line.sides) panels.insert(side.panel + 1);
  QString out;
  std::size_t told = 0;
  for (const std::size_t panel : panels) {
    ++told;
    if (!out.isEmpty()) out += told == panels.size() ? tr(" and ") : QStringLiteral(", ");
    out += QString::number(panel);
  }
  return out;
}

}  // namespace

void drawGrip(QPainter& painter, const PageView& view, const EditHandle& handle, GripState state) {
  const QPainterPath shape = gripShape(view, handle);
  const bool quiet = state == GripState::Shown;
  QPen pen(accent(), quiet ? 1.5 : state == GripState::Held ? 3.5 : 3);
  pen.setJoinStyle(Qt::MiterJoin);
  if (!handle.usual) pen.setStyle(Qt::DashLine);
  strokeTwice(painter, shape, pen);
  if (isFilled(handle.kind)) painter.fillPath(shape, quiet ? QBrush(Qt::white) : QBrush(accent()));
}

void drawSnap(QPainter& painter, const PageView& view, const SnapLine& line) {
  const bool paper = line.to != SnapTo::Border && line.to != SnapTo::Straight;
  QPen pen(coloursOf(DeskLight::Day).warn, 1.5, paper ? Qt::DashLine : Qt::DotLine);
  strokeTwice(painter, lineOf(view, line.from, line.till), pen);
  const char* words = line.to == SnapTo::Live     ? QT_TRANSLATE_NOOP("PageEdit", "live area")
                      : line.to == SnapTo::Trim   ? QT_TRANSLATE_NOOP("PageEdit", "trim")
                      : line.to == SnapTo::Bleed  ? QT_TRANSLATE_NOOP("PageEdit", "bleed")
                      : line.to == SnapTo::Border ? QT_TRANSLATE_NOOP("PageEdit", "in line")
                                                  : QT_TRANSLATE_NOOP("PageEdit", "straight");
  drawWords(painter, view, view.toView(between(line.from, line.till, 0.12)), tr(words));
}

void drawMoved(QPainter& painter, const PageView& view, const std::vector<EditedPanel>& panels) {
  for (const EditedPanel& panel : panels)
    strokeTwice(painter, closedPath(view, panel.outline), QPen(accent(), 1.5));
}

void drawLeadGrip(QPainter& painter, const PageView& view, Point from, Point tip, GripState state) {
  const QPointF end = view.toView(tip);
  QPainterPath ring;
  ring.addEllipse(end, kTipPx, kTipPx);
  const QPen pen(accent(), state == GripState::Shown ? 1.5 : 2.5);
  strokeTwice(painter, lineOf(view, from, tip), pen);
  strokeTwice(painter, ring, pen);
  painter.fillPath(ring, state == GripState::Shown ? QBrush(Qt::white) : QBrush(accent()));
}

void drawWords(QPainter& painter, const PageView& view, QPointF at, const QString& words) {
  if (words.isEmpty()) return;
  painter.setFont(view.font());
  QRect box = painter.fontMetrics().boundingRect(words).adjusted(-7, -4, 7, 4);
  box.moveTopLeft(at.toPoint() + QPoint(14, 12));
  box.moveRight(std::min(box.right(), view.width() - 4));
  box.moveBottom(std::min(box.bottom(), view.height() - 4));
  box.moveLeft(std::max(box.left(), 4));
  painter.fillRect(box, deskColours().sheet);
  painter.setPen(deskColours().ink);
  painter.drawText(box, Qt::AlignCenter, words);
}

QString wordsFor(const PageEdit& edit, const EditHandle& handle) {
  const auto panels = [&] { return panelsOf(edit.lines()[handle.line]); };
  switch (handle.kind) {
    case HandleKind::Gutter:
      return (handle.usual ? tr("gutter between panels %1")
                           : tr("other reach of the gutter between panels %1"))
          .arg(panels());
    case HandleKind::GutterEnd:
      return tr("end of the gutter between panels %1").arg(panels());
    case HandleKind::Border:
      return tr("outer border of panel %1").arg(panels());
    case HandleKind::Corner:
      return tr("corner of panel %1").arg(handle.panel + 1);
    case HandleKind::Tier:
      return tr("tier under the gutter of panels %1").arg(panels());
    case HandleKind::Inset:
      return tr("panel %1 as a whole").arg(handle.panel + 1);
  }
  return {};
}

QString editNameFor(const EditHandle& handle) {
  switch (handle.kind) {
    case HandleKind::Gutter:
      return tr("move gutter");
    case HandleKind::GutterEnd:
      return tr("slant gutter");
    case HandleKind::Border:
      return tr("move border");
    case HandleKind::Corner:
      return tr("move corner");
    case HandleKind::Tier:
      return tr("move tier");
    case HandleKind::Inset:
      return tr("move inset");
  }
  return {};
}

}  // namespace tw
