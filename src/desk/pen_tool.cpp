#include "desk/pen_tool.h"

#include <QCoreApplication>
#include <QPainter>

#include <algorithm>
#include <cmath>

#include "desk/look.h"
#include "desk/page_view.h"
#include "desk/stroke_art.h"
#include "geometry/polygon.h"

namespace tw {

namespace {

constexpr double kLeastStepMm = 0.15;  // between the points of a line
constexpr double kOffMm = 0.05;        // that simplifying may move a line; finer than a 600 dpi dot
constexpr double kLightest = 0.25;     // of the width under no pressure
constexpr double kEraserMm = 2;

QString words(const char* text) {
  return QCoreApplication::translate("PenTool", text);
}

}  // namespace

bool touches(const PenStroke& stroke, Point at, double within) {
  const auto& p = stroke.points;
  if (p.size() == 1) return (p[0] - at).length() <= within;
  for (std::size_t i = 0; i + 1 < p.size(); ++i)
    if (distanceToSegment(at, p[i], p[i + 1]) <= within) return true;
  return false;
}

PenStroke simplified(const PenStroke& stroke, double off) {
  const std::size_t n = stroke.points.size();
  if (n < 3 || stroke.widthsMm.size() != n) return stroke;
  PenStroke out{{}, {}, stroke.black};
  for (const std::size_t i : pointsThatTell(stroke.points, off)) {
    out.points.push_back(stroke.points[i]);
    out.widthsMm.push_back(stroke.widthsMm[i]);
  }
  return out;
}

PenStroke mirroredAcross(PenStroke stroke, double x) {
  for (Point& p : stroke.points) p.x = 2 * x - p.x;
  return stroke;
}

PenStroke scaledAbout(PenStroke stroke, Point about, double factor) {
  for (Point& p : stroke.points) p = about + (p - about) * factor;
  return stroke;
}

void PenTool::hover(PageView& view, const PenPoint& point) {
  at_ = point.at;
  if (setting.erases) view.update();
}

bool PenTool::press(PageView& view, const PenPoint& point) {
  if (document_.isReadOnly() || document_.rough() == nullptr) return false;
  panel_ = view.panelAt(point.at);
  if (!panel_) panel_ = nearestPanel(point.at);  // a line may begin on the gutter or the margin
  if (!panel_ || *panel_ >= document_.rough()->panels.size()) return false;
  if (!setting.erases && view.panelAt(point.at)) document_.selectPanel(panel_);
  isErasing_ = setting.erases || point.isEraser;
  stroke_ = {{}, {}, setting.black};
  if (isErasing_) erased_ = document_.page();
  move(view, point);
  return true;
}

/// Of those within reach of the page.
std::optional<std::size_t> PenTool::nearestPanel(Point at) const {
  const auto& panels = document_.rough()->panels;
  const Rect bleed = document_.job().sheetFor(document_.page()).bleedRect();
  if (panels.empty() || !bleed.contains(at)) return {};
  const auto nearest = std::ranges::min_element(
      panels, {}, [at](const RoughPanel& panel) { return distanceToOutline(panel.outline, at); });
  return static_cast<std::size_t>(nearest - panels.begin());
}

void PenTool::move(PageView& view, const PenPoint& point) {
  at_ = point.at;
  if (isErasing_) {
    eraseAt(point.at);
  } else if (stroke_.points.empty() ||
             (point.at - stroke_.points.back()).length() >= kLeastStepMm) {
    stroke_.points.push_back(point.at);
    stroke_.widthsMm.push_back(
        setting.widthMm * (kLightest + (1 - kLightest) * std::clamp(point.pressure, 0.0, 1.0)));
  }
  view.update();
}

void PenTool::release(PageView& view, const PenPoint&) {
  if (isErasing_) {
    if (erased_) document_.change(words(QT_TRANSLATE_NOOP("PenTool", "erase lines")), *erased_);
    erased_.reset();
  } else {
    keepStroke();
  }
  stroke_ = {};
  isErasing_ = false;
  view.update();
}

void PenTool::cancel(PageView& view) {
  stroke_ = {};
  erased_.reset();
  isErasing_ = false;
  view.update();
}

void PenTool::keepStroke() {
  const auto rough = document_.roughIndex();
  if (!rough || !panel_ || stroke_.points.empty()) return;
  Page page = document_.page();
  auto& panels = page.roughs[*rough].panels;
  if (*panel_ >= panels.size()) return;
  panels[*panel_].strokes.push_back(simplified(stroke_, kOffMm));
  document_.change(words(QT_TRANSLATE_NOOP("PenTool", "draw a line")), page);
}

void PenTool::eraseAt(Point at) {
  const auto rough = document_.roughIndex();
  if (!rough || !erased_) return;
  for (RoughPanel& panel : erased_->roughs[*rough].panels)
    std::erase_if(panel.strokes,
                  [at](const PenStroke& stroke) { return touches(stroke, at, kEraserMm); });
}

void PenTool::paint(PageView& view, QPainter& painter) {
  painter.save();
  painter.translate(view.toView({0, 0}));
  painter.scale(view.pixelsPerMm(), view.pixelsPerMm());
  if (!stroke_.points.empty()) drawStroke(painter, stroke_);
  if (setting.erases || isErasing_) {
    painter.setPen(QPen(coloursOf(DeskLight::Day).warn, 0));
    painter.setBrush(Qt::NoBrush);
    painter.drawEllipse(QPointF(at_.x, at_.y), kEraserMm, kEraserMm);
  }
  painter.restore();
}

}  // namespace tw
