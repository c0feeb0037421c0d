#include "desk/staging_station_shelf.h"

#include <QKeyEvent>
#include <QPainter>

#include <algorithm>

#include "desk/painter_surface.h"
#include "press/inked_line.h"

namespace tw {

namespace {

constexpr int kKeyRole = Qt::UserRole;
constexpr int kWordsPx = 54, kAroundPx = 10;

}  // namespace

PictureShelf::PictureShelf(const QString& name, QSize picture, QWidget* parent)
    : QListWidget(parent) {
  setObjectName(name);
  setViewMode(QListView::IconMode);
  setMovement(QListView::Static);
  setResizeMode(QListView::Adjust);
  setUniformItemSizes(true);
  setWordWrap(true);
  setSpacing(2);
  setIconSize(picture);
  setGridSize(picture + QSize(kAroundPx, kWordsPx));
  setVerticalScrollMode(QAbstractItemView::ScrollPerPixel);
  connect(this, &QListWidget::currentItemChanged, this, [this](QListWidgetItem* now) {
    if (now != nullptr) emit tried(now->data(kKeyRole).toString());
  });
  connect(this, &QListWidget::itemDoubleClicked, this,
          [this](QListWidgetItem* item) { emit kept(item->data(kKeyRole).toString()); });
}

void PictureShelf::add(const QString& key, const QString& title, const QString& toolTip,
                       const QImage& picture) {
  auto* item = new QListWidgetItem(title, this);
  item->setData(kKeyRole, key);
  item->setToolTip(toolTip);
  item->setTextAlignment(Qt::AlignHCenter | Qt::AlignTop);
  item->setSizeHint(gridSize());
  if (!picture.isNull()) item->setIcon(QIcon(QPixmap::fromImage(picture)));
}

void PictureShelf::setPicture(const QString& key, const QImage& picture) {
  for (int i = 0; i < count(); ++i)
    if (item(i)->data(kKeyRole).toString() == key)
      item(i)->setIcon(QIcon(QPixmap::fromImage(picture)));
}

void PictureShelf::filter(const QString& text) {
  const QStringList words = text.toLower().split(u' ', Qt::SkipEmptyParts);
  for (int i = 0; i < count(); ++i) {
    const QString all =
        item(i)->text().toLower() + u' ' + item(i)->data(kKeyRole).toString().toLower();
    const bool has =
        std::ranges::all_of(words, [&](const QString& word) { return all.contains(word); });
    item(i)->setHidden(!has);
  }
}

QString PictureShelf::currentKey() const {
  return currentItem() != nullptr ? currentItem()->data(kKeyRole).toString() : QString();
}

void PictureShelf::keyPressEvent(QKeyEvent* event) {
  const bool enter = event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter;
  if (enter && currentItem() != nullptr)
    emit kept(currentKey());
  else
    QListWidget::keyPressEvent(event);
}

QImage paperPicture(const Drawing& drawing, const Rect& frame, QSize pixels) {
  QImage image(pixels, QImage::Format_RGB32);
  image.fill(Qt::white);
  QPainter painter(&image);
  const double scale = std::min(pixels.width() / frame.width(), pixels.height() / frame.height());
  painter.translate((pixels.width() - scale * frame.width()) / 2,
                    (pixels.height() - scale * frame.height()) / 2);
  painter.scale(scale, scale);
  painter.translate(-frame.min.x, -frame.min.y);
  const Typesetter typesetter;  // sets no type
  PainterSurface surface(painter, typesetter);
  drawPicture(surface, drawing, 0.4 / scale);
  return image;
}

}  // namespace tw
