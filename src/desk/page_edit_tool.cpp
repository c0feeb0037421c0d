#include "desk/page_edit_tool.h"

#include <QEvent>
#include <QKeyEvent>
#include <QPainter>

#include <algorithm>
#include <cmath>

#include "desk/edit_art.h"
#include "desk/in_qt.h"
#include "desk/merge_ids.h"
#include "geometry/length_words.h"
#include "geometry/polygon.h"

namespace tw {

namespace {

constexpr double kReachPx = 9, kSnapPx = 7, kMostSnapMm = 2.5;
constexpr double kStepMm = 0.5, kLongStepMm = 5;
constexpr double kLeadLength = 0.3, kLeastLeadMm = 14;  // of the panel's lesser side
constexpr double kLeastDragMm = 1e-3;

bool sameOutlines(const PageEdit& a, const PageEdit& b) {
  return a.panels() == b.panels();
}

std::vector<EditPanel> withMove(const PageEdit& edit, const EditMove& move) {
  std::vector<EditPanel> out = edit.panels();
  for (const EditedPanel& changed : move.panels) out[changed.panel].outline = changed.outline;
  return out;
}

Qt::CursorShape cursorFor(const EditHandle& handle) {
  switch (handle.kind) {
    case HandleKind::Gutter:
    case HandleKind::Border:
      return std::abs(handle.runs.y) > std::abs(handle.runs.x) ? Qt::SplitVCursor
                                                               : Qt::SplitHCursor;
    case HandleKind::Tier:
      return Qt::SizeVerCursor;
    case HandleKind::GutterEnd:
      return Qt::PointingHandCursor;
    case HandleKind::Corner:
    case HandleKind::Inset:
      return Qt::SizeAllCursor;
  }
  return Qt::ArrowCursor;
}

}  // namespace

std::optional<PageEdit> pageEditOf(const Document& document) {
  const Rough* rough = document.rough();
  if (rough == nullptr) return {};
  const Page& page = document.page();
  return PageEdit(*rough, document.job().sheetFor(page), Job::isRightHand(page));
}

PageEditTool::PageEditTool(Document& document, Engine& engine, PageView& view, QObject* parent)
    : QObject(parent),
      document_(document),
      engine_(engine),
      view_(view),
      preview_(document, engine),
      aim_(engine, preview_),
      merge_(kMergePageEdit) {
  connect(&document_, &Document::pageChanged, this, &PageEditTool::takeDocument);
  connect(&document_, &Document::jobChanged, this, &PageEditTool::takeDocument);
  connect(&document_, &Document::shownChanged, this, &PageEditTool::takeDocument);
  connect(&preview_, &EditPreview::settled, this, &PageEditTool::takeDocument);
  connect(&preview_, &EditPreview::forgotten, this, [this] {
    drag_.reset();
    takeDocument();
  });
  connect(&engine_, &Engine::measured, this, [this] {
    if (!engine_.isTrying()) takeDocument();
  });
  connect(&aim_, &LeadAim::said, this, &PageEditTool::said);
  view_.installEventFilter(this);
  takeDocument();
}

/// Unless a hand holds something, or the document is about to become what is shown.
void PageEditTool::takeDocument() {
  if (drag_ || preview_.isPending()) return;
  auto now = pageEditOf(document_);
  const bool same = now && edit_ && sameOutlines(*now, *edit_);
  if (same) return;
  edit_ = std::move(now);
  hovered_.reset();
  leaveFocus();
  view_.update();
}

bool PageEditTool::eventFilter(QObject* watched, QEvent* event) {
  if (event->type() == QEvent::Leave && !drag_) {
    pointerIn_ = leadHovered_ = false;
    hovered_.reset();
    view_.update();
  }
  return QObject::eventFilter(watched, event);
}

double PageEditTool::reachMm() const {
  return kReachPx / view_.pixelsPerMm();
}

void PageEditTool::setHovered(std::optional<std::size_t> handle) {
  if (handle != hovered_ && handle && edit_)
    emit said(tw::wordsFor(*edit_, edit_->handles()[*handle]));
  hovered_ = handle;
  showCursor();
  view_.update();
}

void PageEditTool::showCursor() {
  if (leadHovered_)
    view_.setCursor(Qt::PointingHandCursor);
  else if (hovered_ && edit_)
    view_.setCursor(cursorFor(edit_->handles()[*hovered_]));
  else
    view_.unsetCursor();
}

void PageEditTool::hover(PageView&, const PenPoint& point) {
  pointer_ = point.at;
  pointerIn_ = true;
  const auto tip = leadTip();
  leadHovered_ = tip && (*tip - point.at).length() <= reachMm();
  const bool unusual = point.keys.testFlag(Qt::AltModifier);
  setHovered(edit_ && !leadHovered_ ? edit_->handleAt(point.at, reachMm(), unusual) : std::nullopt);
}

/// The selected panel is taken anywhere on it when it is an inset.
std::optional<std::size_t> PageEditTool::insetUnder(Point at) const {
  const auto panel = document_.panel();
  if (!panel || view_.panelAt(at) != panel) return {};
  const auto& handles = edit_->handles();
  for (std::size_t i = 0; i < handles.size(); ++i)
    if (handles[i].kind == HandleKind::Inset && handles[i].panel == *panel) return i;
  return {};
}

bool PageEditTool::press(PageView&, const PenPoint& point) {
  if (!edit_ || document_.isReadOnly()) return false;
  const auto tip = leadTip();
  if (tip && (*tip - point.at).length() <= reachMm() && aim_.begin(*document_.panel())) {
    aimTip_ = point.at;
    return true;
  }
  auto handle = edit_->handleAt(point.at, reachMm(), point.keys.testFlag(Qt::AltModifier));
  if (!handle) handle = insetUnder(point.at);
  if (!handle) return false;
  leaveFocus();
  drag_ = Drag{*edit_, *handle, point.at, {}, {}};
  hovered_ = handle;
  return true;
}

void PageEditTool::showMove(Drag& drag, Vector offset, double snapMm) {
  drag.move = drag.edit.moved(drag.handle, offset, snapMm);
  for (const EditedPanel& panel : drag.move.panels) drag.touched.insert(panel.panel);
  const std::vector<EditPanel> now = withMove(drag.edit, drag.move);
  std::vector<std::pair<std::size_t, Polygon>> outlines;
  for (const std::size_t panel : drag.touched) outlines.emplace_back(panel, now[panel].outline);
  if (!outlines.empty()) preview_.show(std::move(outlines));
}

void PageEditTool::move(PageView& view, const PenPoint& point) {
  pointer_ = point.at;
  if (aim_.isAiming()) {
    aimTip_ = point.at;
    aim_.aimAt(point.at);
  } else if (drag_) {
    const bool free = point.keys.testFlag(Qt::ControlModifier);
    const double snap = free ? 0 : std::min(kMostSnapMm, kSnapPx / view.pixelsPerMm());
    showMove(*drag_, point.at - drag_->start, snap);
    emit said(wordsFor(*drag_));
  }
  view.update();
}

/// The document will be so as soon as it is measured; until then this is what can be dragged.
void PageEditTool::goAhead(const Drag& drag) {
  const Page& page = document_.page();
  edit_.emplace(withMove(drag.edit, drag.move), document_.job().sheetFor(page),
                Job::isRightHand(page));
  hovered_.reset();
}

void PageEditTool::release(PageView& view, const PenPoint& point) {
  move(view, point);
  if (aim_.isAiming()) {
    aim_.keep();
  } else if (drag_) {
    const Drag drag = std::move(*drag_);
    drag_.reset();
    const EditHandle handle = drag.edit.handles()[drag.handle];
    if (drag.move.offset.length() < kLeastDragMm) {
      if (!drag.touched.empty()) preview_.drop();
    } else {
      goAhead(drag);
      preview_.keep(editNameFor(handle));
    }
    setHovered(std::nullopt);
    if (drag.move.stopped.empty()) emit said({});
    takeDocument();
  }
  view.update();
}

void PageEditTool::cancel(PageView& view) {
  aim_.drop();
  if (drag_ && !drag_->touched.empty()) preview_.drop();
  drag_.reset();
  hovered_.reset();
  takeDocument();
  showCursor();
  view.update();
}

QString PageEditTool::wordsFor(const Drag& drag) const {
  if (!drag.move.stopped.empty()) return qt(drag.move.stopped);
  return qt(lengthWords(drag.move.offset.length()));
}

/// Grips of the selected panel, or of all: lines before places, usual ones first.
std::vector<std::size_t> PageEditTool::walkOrder() const {
  const auto touches = [&](const EditHandle& handle, std::size_t panel) {
    if (handle.kind == HandleKind::Corner || handle.kind == HandleKind::Inset)
      return handle.panel == panel;
    const auto holds = [&](std::size_t line) {
      return std::ranges::any_of(edit_->lines()[line].sides,
                                 [&](const PanelSide& side) { return side.panel == panel; });
    };
    return holds(handle.line) || holds(handle.second);
  };
  std::vector<std::size_t> out;
  for (std::size_t i = 0; i < edit_->handles().size(); ++i)
    if (!document_.panel() || touches(edit_->handles()[i], *document_.panel())) out.push_back(i);
  std::ranges::stable_sort(out, {}, [&](std::size_t i) {
    const EditHandle& handle = edit_->handles()[i];
    return std::pair(!handle.usual, static_cast<int>(handle.kind));
  });
  return out;
}

/// False at the last grip, so that Tab can leave the page.
bool PageEditTool::walk(bool back) {
  if (!edit_) return false;
  const std::vector<std::size_t> order = walkOrder();
  if (order.empty()) return false;
  std::size_t next = back ? order.size() - 1 : 0;
  if (focused_) {
    const auto at = std::ranges::find(order, *focused_);
    const auto i = static_cast<std::size_t>(at - order.begin());
    if (back ? i == 0 : i + 1 >= order.size()) {
      leaveFocus();
      return false;
    }
    next = back ? i - 1 : i + 1;
  }
  leaveFocus();
  focused_ = order[next];
  emit said(tr("%1; arrow keys move it").arg(tw::wordsFor(*edit_, edit_->handles()[*focused_])));
  view_.update();
  return true;
}

void PageEditTool::leaveFocus() {
  focused_.reset();
  nudged_.reset();
  nudgedBy_ = {};
  ++merge_;
}

bool PageEditTool::nudge(Vector step) {
  if (!edit_ || !focused_ || document_.isReadOnly()) return false;
  if (!nudged_) nudged_ = Drag{*edit_, *focused_, {}, {}, {}};
  showMove(*nudged_, nudgedBy_ + step, 0);
  nudgedBy_ = nudged_->move.offset;
  const EditHandle handle = nudged_->edit.handles()[nudged_->handle];
  goAhead(*nudged_);
  focused_ = edit_->sameHandle(edit_->handles().size() == nudged_->edit.handles().size()
                                   ? edit_->handles()[nudged_->handle]
                                   : handle);
  if (!nudged_->touched.empty()) preview_.keep(editNameFor(handle), merge_);
  emit said(wordsFor(*nudged_));
  view_.update();
  return true;
}

bool PageEditTool::key(PageView&, const QKeyEvent& event) {
  const double step = event.modifiers().testFlag(Qt::ShiftModifier) ? kLongStepMm : kStepMm;
  switch (event.key()) {
    case Qt::Key_Tab:
      return walk(false);
    case Qt::Key_Backtab:
      return walk(true);
    case Qt::Key_Left:
      return nudge({-step, 0});
    case Qt::Key_Right:
      return nudge({step, 0});
    case Qt::Key_Up:
      return nudge({0, -step});
    case Qt::Key_Down:
      return nudge({0, step});
    case Qt::Key_Escape:
      if (!focused_) return false;
      leaveFocus();
      view_.update();
      return true;
    default:
      return false;
  }
}

std::optional<Point> PageEditTool::leadTip() const {
  const MeasurementPtr& m = engine_.latest();
  const auto panel = document_.panel();
  if (!m || !m->measured || !panel || m->page != document_.page().number ||
      *panel >= m->roughNow().panels.size())
    return {};
  const RoughPanel& shown = m->roughNow().panels[*panel];
  if (shown.lead.direction == Vector{}) return {};
  const Rect box = bounds(shown.outline);
  const double length = std::max(kLeastLeadMm, kLeadLength * std::min(box.width(), box.height()));
  return shown.focus + shown.lead.direction * length;
}

void PageEditTool::paintLead(QPainter& painter) const {
  const MeasurementPtr& m = engine_.latest();
  if (aim_.isAiming() && m && m->measured && aim_.panel() < m->roughNow().panels.size()) {
    drawLeadGrip(painter, view_, m->roughNow().panels[aim_.panel()].focus, aimTip_,
                 GripState::Held);
  } else if (const auto tip = leadTip()) {
    drawLeadGrip(painter, view_, m->roughNow().panels[*document_.panel()].focus, *tip,
                 leadHovered_ ? GripState::Hovered : GripState::Shown);
  }
}

/// Corners and insets, or all others: ends of gutters stand close to corners and lie above them.
void PageEditTool::paintGrips(QPainter& painter, bool ofPanels) const {
  const auto near = pointerIn_ ? view_.panelAt(pointer_) : std::nullopt;
  for (std::size_t i = 0; i < edit_->handles().size(); ++i) {
    const EditHandle& handle = edit_->handles()[i];
    const bool ofPanel = handle.kind == HandleKind::Corner || handle.kind == HandleKind::Inset;
    if (ofPanel != ofPanels) continue;
    const bool line = handle.kind == HandleKind::Gutter || handle.kind == HandleKind::Border;
    const bool about = !ofPanel || handle.panel == near || handle.panel == document_.panel();
    const bool lit = i == hovered_ || i == focused_;
    if (lit || (pointerIn_ && handle.usual && !line && about))
      drawGrip(painter, view_, handle, lit ? GripState::Hovered : GripState::Shown);
  }
}

void PageEditTool::paint(PageView& view, QPainter& painter) {
  if (!edit_) return;
  painter.save();
  painter.setRenderHint(QPainter::Antialiasing);
  if (drag_) {
    drawMoved(painter, view, drag_->move.panels);
    for (const SnapLine& line : drag_->move.snaps) drawSnap(painter, view, line);
    drawWords(painter, view, view.toView(pointer_), wordsFor(*drag_));
  } else {
    for (const bool places : {true, false}) paintGrips(painter, places);
    paintLead(painter);
  }
  painter.restore();
}

}  // namespace tw
