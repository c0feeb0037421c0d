#include "desk/rough_thumb.h"

#include <QApplication>
#include <QKeyEvent>
#include <QMouseEvent>
#include <QPainter>
#include <QPainterPath>

#include <algorithm>
#include <cmath>
#include <utility>

#include "command/pin.h"
#include "desk/in_qt.h"
#include "desk/look.h"
#include "desk/painter_surface.h"
#include "desk/pin_shape.h"
#include "geometry/polygon.h"
#include "press/page_art.h"

namespace tw {

namespace {

constexpr int kUsualWidePx = 104;
constexpr double kPinFromEdgePx = 13;
constexpr double kSmallPin = 0.6;  // on a small picture
constexpr int kSmallPictureWidePx = 200;
constexpr double kTagPx = 14;  // the cut corner's side

/// Marks lie on white paper, by day and by night.
const QColor& markColour() {
  return coloursOf(DeskLight::Day).accent;
}

}  // namespace

RoughThumb::RoughThumb(Document& document, QWidget* parent)
    : QWidget(parent), document_(document), pictures_(RoughPictures::of(document)) {
  QSizePolicy policy(QSizePolicy::Preferred, QSizePolicy::Preferred);
  policy.setHeightForWidth(true);
  setSizePolicy(policy);
  connect(&pictures_, &RoughPictures::drawn, this, [this](int page, const QString& rough) {
    if (page == page_ && rough == qt(rough_)) update();
  });
}

void RoughThumb::show(int page, const std::string& rough) {
  page_ = page;
  rough_ = rough;
  setAccessibleName(tr("Rough %1").arg(qt(rough)));
  updateGeometry();
  update();
}

const Rough* RoughThumb::stored() const {
  return roughOf(document_, page_, rough_);
}

Rect RoughThumb::extent() const {
  const Page* page = document_.job().page(page_);
  return page != nullptr ? document_.job().sheetFor(*page).bleedRect() : Rect{{0, 0}, {1, 1}};
}

QRectF RoughThumb::paper() const {
  const Rect mm = extent();
  const double scale = std::min(width() / mm.width(), height() / mm.height());
  const QSizeF size(mm.width() * scale, mm.height() * scale);
  return {QPointF((width() - size.width()) / 2, (height() - size.height()) / 2), size};
}

QTransform RoughThumb::viewFromPage() const {
  const Rect mm = extent();
  const QRectF at = paper();
  const double scale = at.width() / mm.width();
  return QTransform(scale, 0, 0, scale, at.left() - mm.min.x * scale, at.top() - mm.min.y * scale);
}

QSize RoughThumb::sizeHint() const {
  return {kUsualWidePx, heightForWidth(kUsualWidePx)};
}

int RoughThumb::heightForWidth(int width) const {
  const Rect mm = extent();
  return static_cast<int>(std::lround(width * mm.height() / mm.width()));
}

std::optional<std::size_t> RoughThumb::panelAt(QPointF px) const {
  const Rough* rough = stored();
  if (rough == nullptr) return {};
  const QPointF mm = viewFromPage().inverted().map(px);
  const std::vector<std::size_t> order = paintingOrder(*rough);
  for (auto i = order.rbegin(); i != order.rend(); ++i)
    if (contains(rough->panels[*i].outline, Point{mm.x(), mm.y()})) return *i;
  return {};
}

QPointF RoughThumb::middleOf(std::size_t panel) const {
  const Rough* rough = stored();
  if (rough == nullptr || panel >= rough->panels.size()) return rect().center();
  const Point at = centroid(rough->panels[panel].outline);
  return viewFromPage().map(QPointF(at.x, at.y));
}

QPixmap RoughThumb::cut(std::size_t panel) const {
  const Rough* rough = stored();
  if (rough == nullptr || panel >= rough->panels.size()) return {};
  const Rect box = bounds(rough->panels[panel].outline);
  const QRectF px = viewFromPage().mapRect(QRectF(box.min.x, box.min.y, box.width(), box.height()));
  return const_cast<RoughThumb*>(this)->grab(px.toAlignedRect() & rect());
}

void RoughThumb::setMarks(std::map<std::size_t, PanelMark> marks) {
  marks_ = std::move(marks);
  update();
}

void RoughThumb::setDrop(const std::string& beat) {
  if (drop_ == beat) return;
  drop_ = beat;
  update();
}

void RoughThumb::setPointed(std::optional<std::size_t> panel) {
  pointed_ = panel;
  update();
}

void RoughThumb::paintMarks(QPainter& painter, const Rough& rough) const {
  const Page& page = *document_.job().page(page_);
  const QTransform view = viewFromPage();
  const double pin = width() < kSmallPictureWidePx ? kSmallPin : 1;
  for (std::size_t i = 0; i < rough.panels.size(); ++i) {
    const QPainterPath outline = view.map(painterPath(Path(rough.panels[i].outline)));
    const QRectF box = outline.boundingRect();
    if (const auto mark = marks_.find(i); mark != marks_.end()) {
      if (mark->second.shape) {
        painter.strokePath(outline, QPen(QColor(255, 255, 255, 220), 5));
        painter.strokePath(outline, QPen(markColour(), 2.5, Qt::DashLine));
      }
      if (mark->second.staging) {
        QPainterPath corner(box.topLeft());
        corner.lineTo(box.topLeft() + QPointF(kTagPx, 0));
        corner.lineTo(box.topLeft() + QPointF(0, kTagPx));
        corner.closeSubpath();
        painter.fillPath(corner, markColour());
        painter.strokePath(corner, QPen(Qt::white, 1));
      }
    }
    if (pointed_ == i || (!drop_.empty() && rough.panels[i].beat == drop_))
      painter.fillPath(outline,
                       QColor(markColour().red(), markColour().green(), markColour().blue(), 70));
    if (page.pins.stagings.contains(rough.panels[i].beat))
      drawPin(painter, box.topRight() + QPointF(-kPinFromEdgePx, kPinFromEdgePx) * pin,
              isPinned(page, rough, i), markColour(), pin);
  }
}

void RoughThumb::paintEvent(QPaintEvent*) {
  QPainter painter(this);
  painter.setRenderHints(QPainter::Antialiasing | QPainter::SmoothPixmapTransform);
  const QRectF at = paper();
  painter.fillRect(at, Qt::white);
  const Rough* rough = stored();
  if (rough == nullptr) return;
  const QImage image = pictures_.picture(page_, rough_);
  if (!image.isNull()) {
    const QSize size = (at.size() * devicePixelRatioF()).toSize();
    if (std::exchange(scaledOf_, image.cacheKey()) != image.cacheKey() || scaled_.size() != size)
      scaled_ = image.scaled(size, Qt::IgnoreAspectRatio, Qt::SmoothTransformation);
    painter.drawImage(at, scaled_);
  } else {
    for (const RoughPanel& panel : rough->panels)
      painter.strokePath(viewFromPage().map(painterPath(Path(panel.outline))),
                         QPen(QColor(0, 0, 0, 120), 1));
  }
  painter.setPen(QColor(0, 0, 0, 90));
  painter.drawRect(at.adjusted(0.5, 0.5, -0.5, -0.5));
  paintMarks(painter, *rough);
}

void RoughThumb::mousePressEvent(QMouseEvent* event) {
  if (event->button() != Qt::LeftButton) return event->ignore();
  pressedAt_ = event->pos();
  held_ = panelAt(event->position());
  dragging_ = false;
  if (!held_) emit clickedBeside();
}

void RoughThumb::mouseMoveEvent(QMouseEvent* event) {
  if (!held_ || !(event->buttons() & Qt::LeftButton)) return;
  const int far = (event->pos() - pressedAt_).manhattanLength();
  if (!dragging_ && far < QApplication::startDragDistance()) return;
  dragging_ = true;
  emit dragged(*held_, event->globalPosition().toPoint());
}

void RoughThumb::mouseReleaseEvent(QMouseEvent* event) {
  if (!held_ || event->button() != Qt::LeftButton) return;
  const std::size_t panel = *std::exchange(held_, std::nullopt);
  if (std::exchange(dragging_, false))
    emit dropped(panel, event->globalPosition().toPoint());
  else
    emit clicked(panel);
}

void RoughThumb::keyPressEvent(QKeyEvent* event) {
  if (event->key() == Qt::Key_Escape && dragging_) {
    held_.reset();
    dragging_ = false;
    emit dragCancelled();
    return;
  }
  QWidget::keyPressEvent(event);
}

}  // namespace tw
