#include "desk/page_view.h"

#include <QAction>
#include <QCoreApplication>
#include <QEvent>
#include <QKeyEvent>
#include <QMouseEvent>
#include <QPainter>
#include <QPainterPath>
#include <QTabletEvent>
#include <QTransform>
#include <QWheelEvent>

#include <algorithm>
#include <cmath>

#include "desk/controls.h"
#include "desk/in_qt.h"
#include "desk/look.h"
#include "desk/painter_surface.h"
#include "desk/stroke_art.h"
#include "geometry/polygon.h"
#include "press/page_art.h"

namespace tw {

namespace {

constexpr double kAroundPagePx = 22, kAroundPanelMm = 6;
constexpr double kLeastScale = 0.4, kMostScale = 60;
constexpr int kSharpenMs = 160, kPlayMs = 33;
constexpr double kPlayStep = 0.006;

}  // namespace

PageView::PageView(Document& document, Engine& engine, QWidget* parent)
    : QWidget(parent), document_(document), engine_(engine) {
  setObjectName(QStringLiteral("pageView"));
  setAccessibleName(tr("Page"));
  setFocusPolicy(Qt::StrongFocus);
  setMouseTracking(true);
  setAttribute(Qt::WA_OpaquePaintEvent);
  setMinimumSize(260, 260);
  makeActions();
  sharpening_.setSingleShot(true);
  connect(&sharpening_, &QTimer::timeout, this, [this] {
    if (isVisible()) engine_.setPixelsPerMm(scale_ * devicePixelRatioF());
  });
  connect(&playing_, &QTimer::timeout, this, [this] {
    layers_.eyeShare = std::min(1.0, layers_.eyeShare + kPlayStep);
    if (layers_.eyeShare >= 1) playing_.stop();
    update();
  });
  connect(&engine_, &Engine::measured, this, qOverload<>(&QWidget::update));
  connect(&engine_, &Engine::busyChanged, this, qOverload<>(&QWidget::update));
  connect(&underlays_, &FilePictures::read, this, qOverload<>(&QWidget::update));
  connect(&document_, &Document::shownChanged, this, [this] {
    letGoOfOther();
    if (pointedOn_ != document_.roughIndex() || pointedPage_ != document_.page().number)
      pointOut({});
    fit();
    update();
  });
  connect(&document_, &Document::pageChanged, this, [this] { pointOut({}); });
}

PageView::~PageView() = default;

void PageView::makeActions() {
  for (const LayerInfo& info : layerInfos()) {
    auto* action = new QAction(QCoreApplication::translate("Layers", info.title), this);
    action->setObjectName(QString::fromLatin1(info.action));
    action->setCheckable(true);
    action->setChecked(layers_.has(info.layer));
    action->setShortcut(QKeySequence(QString::fromLatin1(info.key)));
    action->setShortcutContext(Qt::WindowShortcut);
    connect(action, &QAction::toggled, this,
            [this, layer = info.layer](bool on) { showLayer(layer, on); });
    addAction(action);
    actions_.append(action);
  }
  auto* play = new QAction(tr("Play the eye's path"), this);
  play->setObjectName(QStringLiteral("playEyePath"));
  play->setShortcut(QKeySequence(QStringLiteral("Shift+E")));
  connect(play, &QAction::triggered, this, &PageView::playEyePath);
  addAction(play);
  actions_.append(play);
  QAction* panel = actionOn(*this, tr("See panel"), "seePanel", QKeySequence(Qt::Key_Z),
                            tr("The selected panel as large as it goes"));
  QAction* page = actionOn(*this, tr("See page"), "seePage", QKeySequence(Qt::SHIFT | Qt::Key_Z),
                           tr("All of it"));
  connect(panel, &QAction::triggered, this, &PageView::fitPanel);
  connect(page, &QAction::triggered, this, &PageView::fitPage);
  sizes_ = {panel, page};
}

void PageView::playEyePath() {
  showLayer(Layer::EyePath, true);
  layers_.eyeShare = 0;
  playing_.start(kPlayMs);
}

void PageView::showLayer(Layer layer, bool shown) {
  if (layer == Layer::EyePath) playing_.stop(), layers_.eyeShare = 1;
  // Both take the page's place, so only one can be seen.
  if (shown && layer == Layer::Values) showLayer(Layer::Squint, false);
  if (shown && layer == Layer::Squint) showLayer(Layer::Values, false);
  layers_.set(layer, shown);
  for (int i = 0; i < kLayers; ++i)
    if (layerInfos()[static_cast<std::size_t>(i)].layer == layer) actions_[i]->setChecked(shown);
  update();
}

void PageView::pointOut(const Polygon& place) {
  pointedOut_ = place;
  pointedPage_ = document_.page().number;
  pointedOn_ = document_.roughIndex();
  update();
}

/// A drag that was begun on another page, rough or panel ends without effect.
void PageView::letGoOfOther() {
  if (!toolHolds_ || heldOn_ == shownNow()) return;
  toolHolds_ = false;
  tool_->cancel(*this);
}

QString PageView::shownNow() const {
  return QStringLiteral("%1/%2/%3")
      .arg(document_.page().number)
      .arg(document_.rough() ? qt(document_.rough()->name) : QString())
      .arg(document_.panel() ? static_cast<int>(*document_.panel()) : -1);
}

void PageView::setTool(PageTool* tool) {
  if (tool_ != nullptr && toolHolds_) tool_->cancel(*this);
  toolHolds_ = false;
  tool_ = tool;
  update();
}

QTransform PageView::viewFromPage() const {
  return QTransform(scale_, 0, 0, scale_, origin_.x(), origin_.y());
}

QPointF PageView::toView(Point mm) const {
  return viewFromPage().map(QPointF(mm.x, mm.y));
}

Point PageView::toPage(QPointF px) const {
  return {(px.x() - origin_.x()) / scale_, (px.y() - origin_.y()) / scale_};
}

std::optional<std::size_t> PageView::panelAt(Point mm) const {
  const MeasurementPtr& m = engine_.latest();
  if (!m || !m->measured) return {};
  const std::vector<std::size_t> order = paintingOrder(m->roughNow());
  for (auto i = order.rbegin(); i != order.rend(); ++i)
    if (contains(m->roughNow().panels[*i].outline, mm)) return *i;
  return {};
}

void PageView::fitPage() {
  kept_ = Kept::Page;
  fit();
}

void PageView::fitPanel() {
  kept_ = Kept::Panel;
  fit();
}

void PageView::fit() {
  const Rough* rough = document_.rough();
  if (kept_ == Kept::Panel && rough != nullptr && document_.panel())
    lookAt(bounds(rough->panels[*document_.panel()].outline).outset(kAroundPanelMm));
  else if (kept_ != Kept::Nothing)
    lookAt(document_.job().sheetFor(document_.page()).bleedRect());
}

void PageView::lookAt(const Rect& mm) {
  const double across = std::max(1.0, width() - 2 * kAroundPagePx);
  const double down = std::max(1.0, height() - 2 * kAroundPagePx);
  scale_ = std::clamp(std::min(across / mm.width(), down / mm.height()), kLeastScale, kMostScale);
  const Point c = mm.centre();
  origin_ = QPointF(width() / 2.0 - c.x * scale_, height() / 2.0 - c.y * scale_);
  sharpenSoon();
}

void PageView::zoomBy(double factor, QPointF about) {
  const Point fixed = toPage(about);
  scale_ = std::clamp(scale_ * factor, kLeastScale, kMostScale);
  origin_ = about - QPointF(fixed.x, fixed.y) * scale_;
  kept_ = Kept::Nothing;
  sharpenSoon();
}

void PageView::sharpenSoon() {
  sharpening_.start(kSharpenMs);
  update();
}

void PageView::showEvent(QShowEvent*) {
  fit();
}

void PageView::resizeEvent(QResizeEvent*) {
  fit();
}

void PageView::wheelEvent(QWheelEvent* event) {
  zoomBy(std::pow(1.0015, event->angleDelta().y()), event->position());
}

PenPoint PageView::penPoint(QPointF px, Qt::KeyboardModifiers keys) const {
  return {.at = toPage(px), .keys = keys};
}

bool PageView::pressAt(const PenPoint& point) {
  setFocus(Qt::MouseFocusReason);
  pointOut({});
  toolHolds_ = tool_ != nullptr && tool_->press(*this, point);
  heldOn_ = shownNow();
  if (!toolHolds_) document_.selectPanel(panelAt(point.at));
  return toolHolds_;
}

void PageView::mousePressEvent(QMouseEvent* event) {
  if (event->button() == Qt::MiddleButton) {
    panning_ = true;
    panFrom_ = event->position();
  } else if (event->button() == Qt::LeftButton) {
    pressAt(penPoint(event->position(), event->modifiers()));
  }
}

void PageView::mouseMoveEvent(QMouseEvent* event) {
  if (panning_) {
    origin_ += event->position() - panFrom_;
    panFrom_ = event->position();
    kept_ = Kept::Nothing;
    update();
    return;
  }
  if (tool_ == nullptr) return;
  const PenPoint point = penPoint(event->position(), event->modifiers());
  if (toolHolds_)
    tool_->move(*this, point);
  else
    tool_->hover(*this, point);
}

void PageView::mouseReleaseEvent(QMouseEvent* event) {
  if (event->button() == Qt::MiddleButton) panning_ = false;
  if (event->button() != Qt::LeftButton || !toolHolds_) return;
  toolHolds_ = false;
  if (tool_ != nullptr) tool_->release(*this, penPoint(event->position(), event->modifiers()));
}

void PageView::tabletEvent(QTabletEvent* event) {
  PenPoint point = penPoint(event->position(), event->modifiers());
  point.pressure = event->pressure();
  point.isEraser = event->pointerType() == QPointingDevice::PointerType::Eraser;
  if (event->type() == QEvent::TabletPress) {
    pressAt(point);
  } else if (event->type() == QEvent::TabletMove) {
    if (tool_ != nullptr && toolHolds_) tool_->move(*this, point);
    if (tool_ != nullptr && !toolHolds_) tool_->hover(*this, point);
  } else if (toolHolds_) {
    toolHolds_ = false;
    if (tool_ != nullptr) tool_->release(*this, point);
  }
  event->accept();  // no mouse events beside it
}

void PageView::keyPressEvent(QKeyEvent* event) {
  if (event->key() == Qt::Key_Escape && toolHolds_) {
    toolHolds_ = false;
    tool_->cancel(*this);
    return;
  }
  if (tool_ != nullptr && tool_->key(*this, *event)) return;
  QWidget::keyPressEvent(event);
}

bool PageView::event(QEvent* event) {
  // Tab belongs to a tool that walks its handles, unless it lets the key go on.
  if (event->type() == QEvent::KeyPress && tool_ != nullptr) {
    const auto& key = static_cast<QKeyEvent&>(*event);
    if ((key.key() == Qt::Key_Tab || key.key() == Qt::Key_Backtab) && tool_->key(*this, key))
      return true;
  }
  return QWidget::event(event);
}

void PageView::paintEvent(QPaintEvent*) {
  QPainter painter(this);
  painter.fillRect(rect(), deskColours().ground);
  painter.setRenderHints(QPainter::Antialiasing | QPainter::SmoothPixmapTransform);
  paintPage(painter);
  if (tool_ != nullptr) tool_->paint(*this, painter);
  paintState(painter);
}

void PageView::paintPage(QPainter& painter) {
  const Sheet sheet = document_.job().sheetFor(document_.page());
  const Rect bleed = sheet.bleedRect(), trim = sheet.trimRect();
  painter.save();
  painter.setTransform(viewFromPage(), true);
  painter.fillRect(QRectF(bleed.min.x, bleed.min.y, bleed.width(), bleed.height()), Qt::white);
  const MeasurementPtr& m = engine_.latest();
  const bool shows = m && m->measured && m->page == document_.page().number;
  if (shows && (layers_.has(Layer::Values) || layers_.has(Layer::Squint))) {
    const int kind = layers_.has(Layer::Values) ? 1 : 2;
    if (derivedOf_ != m->turn || derivedKind_ != kind) {
      const QImage page = composed();
      derived_ = kind == 1 ? inFourValues(page) : squinted(page, m->pixelsPerMm);
      derivedOf_ = m->turn;
      derivedKind_ = kind;
    }
    painter.drawImage(QRectF(bleed.min.x, bleed.min.y, bleed.width(), bleed.height()), derived_);
  } else {
    if (shows) paintPanels(painter);
    if (layers_.has(Layer::Underlays)) paintUnderlays(painter);
  }
  painter.setPen(QPen(QColor(0, 0, 0, 90), 0));
  painter.drawRect(QRectF(trim.min.x, trim.min.y, trim.width(), trim.height()));
  if (shows) {
    if (layers_.has(Layer::Strokes)) paintStrokes(painter);
    drawLayers(painter, *m, layers_, typesetter_);
  }
  painter.restore();
}

void PageView::paintPanels(QPainter& painter) const {
  const Measurement& m = *engine_.latest();
  const QTransform way = painter.transform();
  const auto draw = [&](const Rect& at, const QImage& image) {
    const double ratio = way.m11() * painter.device()->devicePixelRatioF();
    if (std::abs(ratio / m.pixelsPerMm - 1) < 1e-3) {  // pixel for pixel, which is much quicker
      // A view of the same pixels: a ratio set on the shared image would copy them all.
      QImage own(const_cast<uchar*>(image.constBits()), image.width(), image.height(),
                 image.bytesPerLine(), image.format());
      own.setDevicePixelRatio(painter.device()->devicePixelRatioF());
      painter.resetTransform();
      painter.drawImage(way.map(QPointF(at.min.x, at.min.y)).toPoint(), own);
      painter.setTransform(way);
      return;
    }
    // By its own pixels: an image is a hair larger than its place.
    painter.drawImage(
        QRectF(at.min.x, at.min.y, image.width() / m.pixelsPerMm, image.height() / m.pixelsPerMm),
        image);
  };
  const std::vector<std::size_t> order = paintingOrder(m.roughNow());
  for (const std::size_t i : order)
    if (i < m.images.size() && m.images[i]) draw(m.images[i]->at, m.images[i]->picture);
  for (const auto& image : m.images)
    if (image) draw(image->copyAt, image->copy);
}

QImage PageView::composed() const {
  const Measurement& m = *engine_.latest();
  const Rect bleed = m.picture.sheet.bleedRect();
  QImage out(static_cast<int>(bleed.width() * m.pixelsPerMm),
             static_cast<int>(bleed.height() * m.pixelsPerMm), QImage::Format_RGB32);
  out.fill(Qt::white);
  QPainter painter(&out);
  painter.scale(m.pixelsPerMm, m.pixelsPerMm);
  painter.translate(-bleed.min.x, -bleed.min.y);
  paintPanels(painter);
  return out;
}

void PageView::paintUnderlays(QPainter& painter) {
  for (const Underlay& each : document_.page().underlays) {
    const QString file = qt((document_.folder() / "art" / each.file).string());
    const QImage picture = underlays_.picture(file, each.at.width() * scale_ * devicePixelRatioF());
    if (picture.isNull()) continue;
    // Laid over the rough's paper like a tracing, so that both are seen.
    painter.setCompositionMode(QPainter::CompositionMode_Multiply);
    painter.setOpacity(each.strength);
    painter.drawImage(QRectF(each.at.min.x, each.at.min.y, each.at.width(), each.at.height()),
                      picture);
    painter.setOpacity(1);
    painter.setCompositionMode(QPainter::CompositionMode_SourceOver);
  }
}

void PageView::paintStrokes(QPainter& painter) const {
  // They are not measured: what the document says holds, unless a drag takes them along.
  const Measurement& m = *engine_.latest();
  const Rough& rough = m.isPreview || !document_.rough() ? m.roughNow() : *document_.rough();
  for (const RoughPanel& panel : rough.panels)
    for (const PenStroke& stroke : panel.strokes) drawStroke(painter, stroke);
}

/// The selected panel, a place that is pointed out, and whether what is shown is measured yet.
void PageView::paintState(QPainter& painter) {
  const MeasurementPtr& m = engine_.latest();
  const auto outlined = [&](const Polygon& polygon, const QColor& colour, double width) {
    QPainterPath path = viewFromPage().map(painterPath(Path(polygon)));
    painter.strokePath(path, QPen(QColor(255, 255, 255, 200), width + 2));
    painter.strokePath(path, QPen(colour, width));
  };
  const QColor accent = coloursOf(DeskLight::Day).accent;  // paper is white by night as well
  if (m && m->measured && document_.panel() && *document_.panel() < m->roughNow().panels.size() &&
      m->page == document_.page().number)
    outlined(m->roughNow().panels[*document_.panel()].outline, accent, 2);
  if (!pointedOut_.points.empty()) outlined(pointedOut_, coloursOf(DeskLight::Day).warn, 3);
  QString words;
  if (m && m->readingsLate) words = tr("readers on their way …");
  if (m && m->pictureLate) words = tr("picture and readers on their way …");
  if (engine_.isBusy()) words = tr("measuring …");
  if (m && !m->trouble.empty()) words = qt(m->trouble);
  if (m && !engine_.isBusy() && !m->measured && m->trouble.empty())
    words = tr("This page has no rough yet.");
  if (words.isEmpty()) return;
  painter.setFont(font());
  const QRect box = painter.fontMetrics()
                        .boundingRect(QRect(0, 0, width() - 40, height()), Qt::TextWordWrap, words)
                        .adjusted(-8, -5, 8, 5);
  const QRect place(12, height() - box.height() - 10, box.width(), box.height());
  painter.fillRect(place, deskColours().sheet);
  painter.setPen(deskColours().ink);
  painter.drawText(place, Qt::AlignCenter | Qt::TextWordWrap, words);
}

}  // namespace tw
