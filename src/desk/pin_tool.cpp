#include "desk/pin_tool.h"

#include <QPainter>

#include <algorithm>
#include <cmath>

#include "command/pin.h"
#include "desk/look.h"
#include "desk/pin_shape.h"
#include "geometry/polygon.h"

namespace tw {

namespace {

constexpr double kFromEdgePx = 30;  // clear of the corner's own grip
constexpr double kReachPx = 15;     // for a pen
constexpr double kLeastPanelPx = 70;

}  // namespace

PinTool::PinTool(Document& document, Engine& engine, QObject* parent)
    : QObject(parent), document_(document), engine_(engine) {}

/// The rough as it is drawn: while a hand drags, the nails follow.
const Rough* PinTool::shown() const {
  const MeasurementPtr& m = engine_.latest();
  if (!m || !m->measured || m->page != document_.page().number) return nullptr;
  return &m->roughNow();
}

QPointF PinTool::placeOf(const PageView& view, std::size_t panel) const {
  const Rough* rough = shown();
  if (rough == nullptr || panel >= rough->panels.size()) return {};
  const Rect box = bounds(rough->panels[panel].outline);
  const QPointF corner = view.toView({box.max.x, box.min.y});
  return corner + QPointF(-kFromEdgePx, kFromEdgePx);
}

std::optional<std::size_t> PinTool::nailUnder(const PageView& view, Point at) const {
  const Rough* rough = shown();
  if (rough == nullptr) return {};
  const auto panel = view.panelAt(at);
  if (!panel) return {};
  const Rect box = bounds(rough->panels[*panel].outline);
  if (std::min(box.width(), box.height()) * view.pixelsPerMm() < kLeastPanelPx) return {};
  const QPointF off = view.toView(at) - placeOf(view, *panel);
  return std::hypot(off.x(), off.y()) <= kReachPx ? panel : std::nullopt;
}

void PinTool::hover(PageView& view, const PenPoint& point) {
  const auto over = view.panelAt(point.at);
  if (over != over_) view.update();
  over_ = over;
}

bool PinTool::press(PageView& view, const PenPoint& point) {
  const auto nail = nailUnder(view, point.at);
  if (nail) emit toggled(*nail);
  return nail.has_value();
}

void PinTool::paint(PageView& view, QPainter& painter) {
  const Rough* rough = shown();
  if (rough == nullptr) return;
  const Page& page = document_.page();
  const QColor& colour = coloursOf(DeskLight::Day).accent;  // the page is white by night as well
  for (std::size_t i = 0; i < rough->panels.size(); ++i) {
    const bool pinned = page.pins.stagings.contains(rough->panels[i].beat);
    if (pinned || over_ == i)
      drawPin(painter, placeOf(view, i), pinned && isPinned(page, *rough, i), colour);
  }
}

}  // namespace tw
