#include "desk/copy_tool.h"

#include <QKeyEvent>
#include <QPainter>
#include <QPainterPath>

#include <algorithm>
#include <cmath>

#include "desk/look.h"
#include "desk/merge_ids.h"
#include "desk/page_view.h"
#include "desk/painter_surface.h"
#include "geometry/polygon.h"
#include "letter/move_balloon.h"
#include "letter/placed_copy.h"
#include "press/page_art.h"

namespace tw {

namespace {

constexpr double kTipPx = 11;                      // from a tip, that still takes it
constexpr double kNudgeMm = 0.5, kFarNudgeMm = 3;  // with and without Shift
constexpr double kClickPx = 3;                     // a shorter way is a click

/// A box around copy that has no outline of its own.
Rect boxOf(const PlacedBalloon& balloon, const Letterer& letterer) {
  if (balloon.outline.points.size() > 2) return bounds(balloon.outline);
  const Setting setting = settingOf(balloon, letterer.style(), letterer.type());
  const Point middle = middleOf(balloon, letterer.type());
  const Vector half{setting.shape.halfWidth(), setting.shape.halfHeight()};
  return {middle - half, middle + half};
}

bool takesTail(CopyKind kind) {
  return kind == CopyKind::Speech || kind == CopyKind::Whisper || kind == CopyKind::Shout ||
         kind == CopyKind::Thought;
}

bool isUnder(Point at, const PlacedBalloon& balloon, const Letterer& letterer) {
  const auto within = [&](const Polygon& p) { return p.points.size() > 2 && contains(p, at); };
  return within(balloon.outline) || within(balloon.tail) ||
         (balloon.outline.points.size() < 3 && boxOf(balloon, letterer).contains(at));
}

}  // namespace

CopyTool::CopyTool(Document& document, Engine& engine, QObject* parent)
    : QObject(parent), document_(document), engine_(engine), page_(document.page().number) {
  connect(&engine_, &Engine::measured, this, [this] {
    if (!engine_.isBusy()) {
      working_.reset();
      if (!drag_) held_.reset();
    }
    emit lookChanged();
  });
  connect(&document_, &Document::pageChanged, this, [this] { working_.reset(); });
  connect(&document_, &Document::shownChanged, this, [this] {
    working_.reset();
    const int page = document_.page().number;
    if (std::exchange(page_, page) != page) choose({});
    const auto& panels = document_.page().beats;
    if (chosen_ && document_.panel() && *document_.panel() != chosen_->panel) choose({});
    if (chosen_ && chosen_->panel >= panels.size()) choose({});
  });
}

std::optional<CopyTool::Hand> CopyTool::handOn(std::size_t panel) const {
  const MeasurementPtr& m = engine_.latest();
  const RoughPanel* now = panelNow(panel);
  if (now == nullptr) return {};
  Hand hand{m, m->measured->letterRequestOf(panel), &m->staged->workshop->letterer};
  hand.request.standing = now->balloons;
  return hand;
}

const RoughPanel* CopyTool::panelNow(std::size_t panel) const {
  const MeasurementPtr& m = engine_.latest();
  if (!m || !m->measured || m->page != document_.page().number) return nullptr;
  if (working_ && working_->first == panel) return &working_->second;
  const Rough& rough = m->roughNow();
  return panel < rough.panels.size() ? &rough.panels[panel] : nullptr;
}

const PlacedBalloon* CopyTool::balloonAt(const CopyPlace& place) const {
  const RoughPanel* panel = panelNow(place.panel);
  if (panel == nullptr) return nullptr;
  const auto found = std::ranges::find(panel->balloons, place.item, &PlacedBalloon::item);
  return found == panel->balloons.end() ? nullptr : &*found;
}

const PlacedBalloon* CopyTool::balloon() const {
  return chosen_ ? balloonAt(*chosen_) : nullptr;
}

void CopyTool::choose(std::optional<CopyPlace> place) {
  if (chosen_ == place) return;
  chosen_ = std::move(place);
  ++merge_;
  if (chosen_) document_.selectPanel(chosen_->panel);
  emit chosenChanged();
  emit lookChanged();
}

void CopyTool::chooseNext(int step) {
  const MeasurementPtr& m = engine_.latest();
  if (!m || !m->measured) return;
  std::vector<CopyPlace> all;
  for (std::size_t i = 0; i < m->roughNow().panels.size(); ++i)
    for (const PlacedBalloon& each : m->roughNow().panels[i].balloons)
      all.push_back({i, each.item});
  if (all.empty()) return;
  const auto now = chosen_ ? std::ranges::find(all, *chosen_) : all.end();
  const auto count = static_cast<std::ptrdiff_t>(all.size());
  const std::ptrdiff_t at = now == all.end() ? (step > 0 ? -1 : 0) : now - all.begin();
  choose(all[static_cast<std::size_t>((at + step + count) % count)]);
}

void CopyTool::put(const CopyPlace& place, PlacedBalloon balloon) {
  const RoughPanel* now = panelNow(place.panel);
  if (now == nullptr) return;
  RoughPanel changed = *now;
  const auto found = std::ranges::find(changed.balloons, place.item, &PlacedBalloon::item);
  if (found == changed.balloons.end()) return;
  *found = std::move(balloon);
  working_ = {place.panel, changed};
  engine_.tryPanel(place.panel, std::move(changed));
  emit lookChanged();
}

void CopyTool::keep(const QString& what, PlacedBalloon balloon) {
  if (!chosen_) return;
  held_ = balloon.byHand ? std::optional(balloon) : std::nullopt;
  put(*chosen_, std::move(balloon));
  engine_.keep(what, kMergeCopy + merge_ % 0xffff);
}

void CopyTool::nudge(Vector by) {
  const PlacedBalloon* now = balloon();
  const auto hand = now ? handOn(chosen_->panel) : std::nullopt;
  if (hand) keep(tr("Move balloon"), movedBalloon(*now, by, hand->request, *hand->letterer));
}

void CopyTool::nudgeTip(Vector by) {
  const PlacedBalloon* now = balloon();
  const auto hand = now ? handOn(chosen_->panel) : std::nullopt;
  const auto tip = tipHandle();
  if (hand && tip)
    keep(tr("Move tail"), withTailTip(*now, *tip + by, hand->request, *hand->letterer));
}

bool CopyTool::reshape(int step) {
  const PlacedBalloon* now = balloon();
  const auto hand = now ? handOn(chosen_->panel) : std::nullopt;
  if (!hand) return false;
  auto changed = reshapedBalloon(*now, step, hand->request, *hand->letterer);
  if (!changed) {
    emit told(step < 0 ? tr("No broader setting fits the panel.")
                       : tr("These words cannot be set narrower."));
    return false;
  }
  keep(step < 0 ? tr("Broader balloon") : tr("Narrower balloon"), std::move(*changed));
  return true;
}

void CopyTool::aimTail() {
  const PlacedBalloon* now = balloon();
  const auto hand = now ? handOn(chosen_->panel) : std::nullopt;
  if (hand) keep(tr("Aim tail"), withAimedTail(*now, hand->request, *hand->letterer));
}

void CopyTool::placeAgain() {
  const PlacedBalloon* now = balloon();
  if (now == nullptr || !now->byHand) return;
  PlacedBalloon freed = *now;
  freed.byHand = false;
  ++merge_;
  keep(tr("Let the program place the balloon"), std::move(freed));
}

void CopyTool::showNumbers(bool shown) {
  numbers_ = shown;
  emit lookChanged();
}

std::optional<CopyPlace> CopyTool::hit(Point at) const {
  const MeasurementPtr& m = engine_.latest();
  if (!m || !m->measured || m->page != document_.page().number) return {};
  const Letterer& letterer = m->staged->workshop->letterer;
  if (const PlacedBalloon* own = balloon(); own && isUnder(at, *own, letterer)) return chosen_;
  for (std::size_t i = m->roughNow().panels.size(); i-- > 0;) {
    const RoughPanel* panel = panelNow(i);
    for (auto each = panel->balloons.rbegin(); each != panel->balloons.rend(); ++each)
      if (isUnder(at, *each, letterer)) return CopyPlace{i, each->item};
  }
  return {};
}

/// Where the chosen balloon's tail ends; where one could be drawn out when it has none.
std::optional<Point> CopyTool::tipHandle() const {
  const PlacedBalloon* own = balloon();
  if (own == nullptr || !takesTail(own->kind)) return {};
  const Letterer& letterer = engine_.latest()->staged->workshop->letterer;
  const Rect box = boxOf(*own, letterer);
  const auto tip = tipOf(*own, middleOf(*own, letterer.type()));
  return tip ? *tip : Point{box.centre().x, box.max.y};
}

void CopyTool::hover(PageView& view, const PenPoint& point) {
  const auto tip = tipHandle();
  const QPointF at = view.toView(point.at);
  if (tip && std::hypot(view.toView(*tip).x() - at.x(), view.toView(*tip).y() - at.y()) < kTipPx)
    view.setCursor(Qt::CrossCursor);
  else if (hit(point.at))
    view.setCursor(Qt::SizeAllCursor);
  else
    view.unsetCursor();
}

bool CopyTool::press(PageView& view, const PenPoint& point) {
  const auto tip = tipHandle();
  const QPointF px = view.toView(point.at);
  const bool onTip =
      tip && std::hypot(view.toView(*tip).x() - px.x(), view.toView(*tip).y() - px.y()) < kTipPx;
  const auto place = onTip ? chosen_ : hit(point.at);
  if (!place) {
    choose({});
    return false;
  }
  choose(place);
  const PlacedBalloon* own = balloon();
  auto hand = handOn(place->panel);
  if (own == nullptr || !hand) return true;
  drag_ = Drag{onTip, *place, point.at, *own, std::move(*hand), false};
  return true;
}

void CopyTool::move(PageView& view, const PenPoint& point) {
  if (!drag_) return;
  const Vector by = point.at - drag_->from;
  if (!drag_->moved && by.length() * view.pixelsPerMm() < kClickPx) return;
  drag_->moved = true;
  const Letterer& letterer = *drag_->hand.letterer;
  held_ = drag_->tip ? withTailTip(drag_->start, point.at, drag_->hand.request, letterer)
                     : movedBalloon(drag_->start, by, drag_->hand.request, letterer);
  put(drag_->place, *held_);
}

void CopyTool::release(PageView&, const PenPoint&) {
  if (!drag_) return;
  const bool moved = drag_->moved, tip = drag_->tip;
  drag_.reset();
  if (moved) engine_.keep(tip ? tr("Drag tail") : tr("Drag balloon"));
  ++merge_;
}

void CopyTool::cancel(PageView&) {
  drag_.reset();
  held_.reset();
  working_.reset();
  engine_.drop();
  emit lookChanged();
}

bool CopyTool::key(PageView&, const QKeyEvent& event) {
  const double step = event.modifiers().testFlag(Qt::ShiftModifier) ? kFarNudgeMm : kNudgeMm;
  const auto move = [&](Vector by) {
    if (event.modifiers().testFlag(Qt::AltModifier))
      nudgeTip(by);
    else
      nudge(by);
    return chosen_.has_value();
  };
  switch (event.key()) {
    case Qt::Key_Left:
      return move({-step, 0});
    case Qt::Key_Right:
      return move({step, 0});
    case Qt::Key_Up:
      return move({0, -step});
    case Qt::Key_Down:
      return move({0, step});
    case Qt::Key_Tab:
      chooseNext(1);
      return true;
    case Qt::Key_Backtab:
      chooseNext(-1);
      return true;
    case Qt::Key_Escape: {
      const bool had = chosen_.has_value();
      choose({});
      return had;
    }
    default:
      return false;
  }
}

void CopyTool::paintHeld(PageView& view, QPainter& painter) {
  if (!held_) return;
  RoughPanel alone;
  alone.balloons = {*held_};
  painter.save();
  const QPointF origin = view.toView({0, 0});
  painter.translate(origin);
  painter.scale(view.pixelsPerMm(), view.pixelsPerMm());
  PainterSurface surface(painter, typesetter_);
  drawPanelCopy(surface, alone, typesetter_);
  painter.restore();
}

void CopyTool::paintChosen(PageView& view, QPainter& painter) {
  const PlacedBalloon* own = held_ ? &*held_ : balloon();
  if (own == nullptr || !chosen_) return;
  const Letterer& letterer = engine_.latest()->staged->workshop->letterer;
  const QColor accent = coloursOf(DeskLight::Day).accent;  // paper is white by night as well
  QPainterPath path;
  const auto add = [&](const Polygon& outline) {
    QPolygonF points;
    for (const Point& p : outline.points) points << view.toView(p);
    path.addPolygon(points);
    path.closeSubpath();
  };
  const Rect box = boxOf(*own, letterer);
  add(own->outline.points.size() > 2 ? own->outline : polygonOf(box));
  painter.strokePath(path, QPen(QColor(255, 255, 255, 220), 5));
  painter.strokePath(path, QPen(accent, 2.5));
  if (own->byHand) {  // a pin where it is held
    const QPointF at = view.toView({box.centre().x, box.min.y});
    painter.setPen(QPen(Qt::white, 2));
    painter.setBrush(accent);
    painter.drawRect(QRectF(at.x() - 5, at.y() - 5, 10, 10));
  }
  if (const auto tip = tipHandle()) {
    const auto heldTip = held_ ? tipOf(*held_, middleOf(*held_, letterer.type())) : tip;
    const QPointF at = view.toView(heldTip.value_or(*tip));
    const QPolygonF diamond(
        {at + QPointF(0, -8), at + QPointF(8, 0), at + QPointF(0, 8), at + QPointF(-8, 0)});
    painter.setPen(QPen(Qt::white, 2));
    painter.setBrush(own->tail.points.empty() ? QColor(Qt::white) : accent);
    painter.drawPolygon(diamond);
    painter.setBrush(Qt::NoBrush);
    painter.setPen(QPen(accent, 1.5));
    painter.drawPolygon(diamond);
  }
  painter.setBrush(Qt::NoBrush);
}

/// Through the whole page, as they are meant to be read.
void CopyTool::paintNumbers(PageView& view, QPainter& painter) const {
  const MeasurementPtr& m = engine_.latest();
  const Letterer& letterer = m->staged->workshop->letterer;
  int number = 0;
  QFont font = painter.font();
  font.setBold(true);
  const double radius = std::clamp(2.2 * view.pixelsPerMm(), 8.0, 13.0);
  font.setPixelSize(static_cast<int>(1.25 * radius));
  painter.setFont(font);
  for (std::size_t i = 0; i < m->roughNow().panels.size(); ++i)
    for (const PlacedBalloon& each : panelNow(i)->balloons) {
      const Rect box = boxOf(each, letterer);
      const QPointF at = view.toView(box.min) - QPointF(radius, radius) * 0.6;
      const QRectF disc(at.x() - radius, at.y() - radius, 2 * radius, 2 * radius);
      painter.setPen(QPen(Qt::white, 2));
      painter.setBrush(coloursOf(DeskLight::Day).accent);
      painter.drawEllipse(disc);
      painter.setPen(Qt::white);
      painter.drawText(disc, Qt::AlignCenter, QString::number(++number));
    }
  painter.setBrush(Qt::NoBrush);
}

void CopyTool::paint(PageView& view, QPainter& painter) {
  const MeasurementPtr& m = engine_.latest();
  if (!m || !m->measured || m->page != document_.page().number) return;
  painter.save();
  paintHeld(view, painter);
  if (numbers_) paintNumbers(view, painter);
  paintChosen(view, painter);
  painter.restore();
}

}  // namespace tw
