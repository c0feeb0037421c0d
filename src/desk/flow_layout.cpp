#include "desk/flow_layout.h"

#include <algorithm>

namespace tw {

namespace {

constexpr int kGapPx = 4;

}  // namespace

FlowLayout::FlowLayout(QWidget* parent) : QLayout(parent) {
  setContentsMargins(0, 0, 0, 0);
}

FlowLayout::~FlowLayout() {
  qDeleteAll(items_);
}

void FlowLayout::addItem(QLayoutItem* item) {
  items_.append(item);
}

int FlowLayout::count() const {
  return static_cast<int>(items_.size());
}

QLayoutItem* FlowLayout::itemAt(int index) const {
  return items_.value(index);
}

QLayoutItem* FlowLayout::takeAt(int index) {
  return index >= 0 && index < items_.size() ? items_.takeAt(index) : nullptr;
}

int FlowLayout::heightForWidth(int width) const {
  return arrange(QRect(0, 0, width, 0), false);
}

QSize FlowLayout::minimumSize() const {
  QSize size;
  for (const QLayoutItem* item : items_) size = size.expandedTo(item->minimumSize());
  return size;
}

void FlowLayout::setGeometry(const QRect& rect) {
  QLayout::setGeometry(rect);
  arrange(rect, true);
}

int FlowLayout::arrange(const QRect& rect, bool moves) const {
  int x = rect.x(), y = rect.y(), rowHigh = 0;
  for (QLayoutItem* item : items_) {
    const QSize size = item->sizeHint();
    if (x > rect.x() && x + size.width() > rect.right() + 1) {
      x = rect.x();
      y += rowHigh + kGapPx;
      rowHigh = 0;
    }
    if (moves) item->setGeometry(QRect(QPoint(x, y), size));
    x += size.width() + kGapPx;
    rowHigh = std::max(rowHigh, size.height());
  }
  return y + rowHigh - rect.y();
}

}  // namespace tw
