#include "desk/staging_tool.h"

#include <QKeyEvent>
#include <QPainter>

#include <algorithm>
#include <cmath>

#include "desk/in_qt.h"
#include "desk/look.h"
#include "desk/merge_ids.h"
#include "desk/page_view.h"
#include "desk/staging_tool_marks.h"
#include "geometry/polygon.h"

namespace tw {

namespace {

constexpr double kReachPx = 15;  // how near a press must be to a handle
constexpr double kStepMm = 1, kBigStepMm = 5, kFineStepMm = 0.2;
constexpr double kNearerM = 0.02;
constexpr double kOrbitDegPerMm = 1.2, kTurnDegPerMm = 0.25;
constexpr double kDollyPerMm = 0.012;  // of the logarithm of the distance

}  // namespace

QString nameOf(StagingMode mode) {
  switch (mode) {
    case StagingMode::Pose:
      return StagingTool::tr("Pose");
    case StagingMode::Orbit:
      return StagingTool::tr("Round it");
    case StagingMode::Dolly:
      return StagingTool::tr("In and out");
    case StagingMode::Slide:
      return StagingTool::tr("Slide");
    case StagingMode::Turn:
      return StagingTool::tr("Look about");
  }
  return {};
}

/// Of other figures only the head is shown, to take hold of them by.
bool StagingTool::isShown(const Handle& handle) const {
  if (handle.behindEye) return false;
  // The middle of a thing that is cut by the border would stand beside the page.
  if (handle.grab == Grab::Thing) return !handle.outside;
  return handle.figure == hand_.figure() || handle.grab == Grab::Head;
}

std::optional<std::size_t> StagingTool::handleAt(const PageView& view, Point mm) const {
  std::optional<std::size_t> best;
  double nearest = kReachPx;
  for (std::size_t i = 0; i < hand_.handles().size(); ++i) {
    const Handle& handle = hand_.handles()[i];
    if (!isShown(handle)) continue;
    double far = (handle.page - mm).length() * view.pixelsPerMm();
    if (handle.hidden) far += 4;  // what is seen goes before what lies behind it
    if (far < nearest) nearest = far, best = i;
  }
  return best;
}

int StagingTool::figureAt(Point mm) const {
  const auto& panels = hand_.measurement()->roughNow().panels;
  if (hand_.panel() >= panels.size()) return -1;
  const auto& figures = panels[hand_.panel()].figures;
  for (std::size_t i = 0; i < figures.size(); ++i)
    for (const Polygon& part : figures[i].body)
      if (contains(part, mm)) return static_cast<int>(i);
  return -1;
}

void StagingTool::hover(PageView& view, const PenPoint& point) {
  if (!hand_.isReady() || mode_ != StagingMode::Pose) return;
  const auto now = handleAt(view, point.at);
  if (now == hovered_) return;
  hovered_ = now;
  emit hand_.said(now ? hand_.nameOfHandle(hand_.handles()[*now]) : QString());
  view.update();
}

bool StagingTool::press(PageView& view, const PenPoint& point) {
  if (!hand_.isReady()) return false;
  pressedAt_ = point.at;
  from_ = hand_.staging();
  nearerM_ = 0;
  moved_ = false;
  if (mode_ != StagingMode::Pose) {
    dragging_ = contains(hand_.storedPanel().outline, point.at);
    return dragging_;
  }
  const auto handle = handleAt(view, point.at);
  if (!handle) {
    const int figure = figureAt(point.at);
    if (figure >= 0) hand_.selectFigure(figure);
    view.update();
    // A press within the panel that meets nothing must not choose another panel.
    return contains(hand_.storedPanel().outline, point.at);
  }
  hand_.hold(handle);
  at_ = point;
  handle_ = hand_.handles()[*handle];
  dragging_ = true;
  view.update();
  return true;
}

void StagingTool::move(PageView& view, const PenPoint& point) {
  if (!dragging_ || !hand_.isReady()) return;
  at_ = point;
  if (!moved_ && (point.at - pressedAt_).length() * view.pixelsPerMm() < 2) return;
  moved_ = true;
  if (mode_ == StagingMode::Pose)
    dragHandle(point);
  else
    hand_.attempt(staged(from_, point.at - pressedAt_));
  view.update();
}

void StagingTool::dragHandle(const PenPoint& point) {
  DragTo to{handle_.page + (point.at - pressedAt_)};
  to.nearerM = nearerM_;
  to.upright = point.keys.testFlag(Qt::ShiftModifier);
  const Dragged dragged = tw::dragged(hand_.stage(), from_, handle_, to, hand_.pins());
  tell(dragged);
  hand_.attempt(dragged.staging);
}

/// While the mouse holds a handle.
void StagingTool::bringNearer(double byM) {
  if (mode_ != StagingMode::Pose || byM == 0) return;
  nearerM_ += byM;
  moved_ = true;
  dragHandle(at_);
}

void StagingTool::tell(const Dragged& dragged) const {
  QString words = qt(dragged.shortfall);
  for (const std::string& limit : dragged.limits)
    words +=
        (words.isEmpty() ? QString() : QStringLiteral(" · ")) + tr("at its limit: ") + qt(limit);
  emit hand_.said(words);
}

QString StagingTool::whatMoved() const {
  if (mode_ != StagingMode::Pose) return tr("camera: %1").arg(nameOf(mode_).toLower());
  return tr("move %1").arg(hand_.nameOfHandle(handle_));
}

void StagingTool::release(PageView& view, const PenPoint&) {
  if (dragging_ && moved_) hand_.keep(whatMoved());
  dragging_ = moved_ = false;
  view.update();
}

void StagingTool::cancel(PageView& view) {
  dragging_ = moved_ = false;
  hand_.drop();
  emit hand_.said({});
  view.update();
}

/// The camera after a drag by `mm` in the present mode.
CameraPlace StagingTool::cameraMoved(const Staging& from, Vector mm) const {
  const StagedPanel& stage = hand_.stage();
  const Vec3 pivot = hand_.pivot();
  switch (mode_) {
    case StagingMode::Orbit:
      return orbited(from.camera, pivot, mm.x * kOrbitDegPerMm, mm.y * kOrbitDegPerMm);
    case StagingMode::Dolly:
      return dollied(from.camera, pivot, std::exp(mm.y * kDollyPerMm));
    case StagingMode::Slide:
      return trucked(from.camera, pivot, mm * (1 / stage.frame.width()), stage.aspect());
    default:
      return turned(from.camera, -mm.x * kTurnDegPerMm, mm.y * kTurnDegPerMm);
  }
}

Staging StagingTool::staged(const Staging& from, Vector mm) const {
  return seenBy(hand_.stage(), from, cameraMoved(from, mm));
}

void StagingTool::walk(int by) {
  const std::vector<Handle>& handles = hand_.handles();
  const auto n = static_cast<int>(handles.size());
  if (n == 0) return;
  int at = by > 0 ? -1 : 0;
  if (const Handle* held = hand_.held()) at = static_cast<int>(held - handles.data());
  for (int k = 0; k < n; ++k) {
    at = (at + by + n) % n;
    if (handles[static_cast<std::size_t>(at)].behindEye) continue;
    hand_.hold(static_cast<std::size_t>(at));
    emit hand_.said(hand_.nameOfHandle(handles[static_cast<std::size_t>(at)]));
    return;
  }
}

void StagingTool::nudge(Vector mm, double nearerM) {
  const Handle* held = hand_.held();
  if (held == nullptr) return;
  handle_ = *held;
  DragTo to{handle_.page + mm};
  to.nearerM = nearerM;
  const Dragged dragged = tw::dragged(hand_.stage(), hand_.staging(), handle_, to, hand_.pins());
  tell(dragged);
  const auto index = static_cast<int>(held - hand_.handles().data());
  hand_.apply(dragged.staging, tr("move %1").arg(hand_.nameOfHandle(handle_)),
              kMergeHandles + index);
}

void StagingTool::nudgeCamera(Vector mm) {
  hand_.apply(staged(hand_.staging(), mm), whatMoved(), kMergeCamera + static_cast<int>(mode_));
}

bool StagingTool::key(PageView& view, const QKeyEvent& event) {
  if (!hand_.isReady()) return false;
  const bool big = event.modifiers().testFlag(Qt::ShiftModifier);
  const bool fine = event.modifiers().testFlag(Qt::ControlModifier);
  const double step = big ? kBigStepMm : fine ? kFineStepMm : kStepMm;
  const auto go = [&](Vector mm, double nearerM) {
    if (dragging_) {
      bringNearer(nearerM);
    } else if (mode_ != StagingMode::Pose) {
      nudgeCamera(mm);
    } else if (hand_.held() != nullptr) {
      nudge(mm, nearerM);
    } else {
      return false;
    }
    view.update();
    return true;
  };
  switch (event.key()) {
    case Qt::Key_Tab:
      walk(1);
      break;
    case Qt::Key_Backtab:
      walk(-1);
      break;
    case Qt::Key_Left:
      return go({-step, 0}, 0);
    case Qt::Key_Right:
      return go({step, 0}, 0);
    case Qt::Key_Up:
      return go({0, -step}, 0);
    case Qt::Key_Down:
      return go({0, step}, 0);
    case Qt::Key_Period:
      return go({0, 0}, big ? 5 * kNearerM : kNearerM);
    case Qt::Key_Comma:
      return go({0, 0}, big ? -5 * kNearerM : -kNearerM);
    case Qt::Key_K:
      if (hand_.held() == nullptr) return false;
      hand_.togglePin(*hand_.held());
      break;
    case Qt::Key_Escape:
      if (hand_.isTrying())
        hand_.drop();
      else if (hand_.held() != nullptr)
        hand_.hold({});
      else
        return false;
      break;
    default:
      return false;
  }
  view.update();
  return true;
}

void StagingTool::paint(PageView& view, QPainter& painter) {
  if (!hand_.isReady()) return;
  painter.save();
  painter.setRenderHint(QPainter::Antialiasing);
  if (mode_ != StagingMode::Pose) {
    paintPivot(view, painter);
  } else {
    if (hand_.figure() >= 0) paintBones(view, painter);
    // What lies behind first, what is held last.
    for (const bool hidden : {true, false})
      for (std::size_t i = 0; i < hand_.handles().size(); ++i)
        if (hand_.handles()[i].hidden == hidden && &hand_.handles()[i] != hand_.held())
          paintHandle(view, painter, i);
    if (const Handle* held = hand_.held())
      paintHandle(view, painter, static_cast<std::size_t>(held - hand_.handles().data()));
  }
  painter.restore();
}

/// Thin lines from joint to joint: they keep up with the hand also when the picture is late.
void StagingTool::paintBones(const PageView& view, QPainter& painter) const {
  const StagedPanel& stage = hand_.stage();
  const SetFigure& set = hand_.staging().figures[static_cast<std::size_t>(hand_.figure())];
  const Skeleton s = posed(stage.stager->bodyOf(set.who, stage.beat->id),
                           stage.stager->poses().orStand(set.pose), set);
  const Camera camera = stage.cameraOf(hand_.staging());
  const auto seen = [&](Joint joint) -> std::optional<QPointF> {
    const auto at = camera.project(s[joint]);
    if (!at) return std::nullopt;
    return view.toView(stage.pageFrom(*at));
  };
  const double strength = dragging_ ? 0.9 : 0.45;
  for (const auto& chain : boneChains()) {
    QPolygonF line;
    for (const Joint joint : chain)
      if (const auto at = seen(joint)) line << *at;
    drawBone(painter, line, strength);
  }
}

void StagingTool::paintPivot(const PageView& view, QPainter& painter) const {
  const StagedPanel& stage = hand_.stage();
  const auto at = stage.cameraOf(hand_.staging()).project(hand_.pivot());
  if (at) drawPivot(painter, view.toView(stage.pageFrom(*at)));
}

void StagingTool::paintHandle(const PageView& view, QPainter& painter, std::size_t index) const {
  const Handle& handle = hand_.handles()[index];
  if (!isShown(handle)) return;
  HandleMark mark;
  mark.grab = handle.grab;
  mark.at = view.toView(handle.page);
  mark.isHeld = &handle == hand_.held();
  mark.isHovered = hovered_ == index;
  mark.isHidden = handle.hidden || handle.outside;
  mark.isPinned = hand_.isPinned(handle);
  mark.isOther = handle.grab != Grab::Thing && handle.figure != hand_.figure();
  for (const Handle& each : hand_.handles()) {
    if (each.figure != handle.figure || each.behindEye) continue;
    const bool from = (handle.grab == Grab::Gaze && each.grab == Grab::Head) ||
                      (handle.grab == Grab::Heading && each.grab == Grab::Ground);
    if (from) mark.from = view.toView(each.page);
  }
  drawHandle(painter, mark);
}

}  // namespace tw
