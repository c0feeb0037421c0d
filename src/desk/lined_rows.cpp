#include "desk/lined_rows.h"

#include <QAbstractItemView>
#include <QIcon>
#include <QPainter>

#include <algorithm>

#include "desk/look.h"

namespace tw {

namespace {

constexpr int kPadX = 8, kPadY = 6, kLineGap = 1, kByIcon = 8;
constexpr int kAnyHeight = 100000;
constexpr qsizetype kQuietFrom = 2;  // the third line

}  // namespace

LinedRows::LinedRows(First first, QObject* parent) : QStyledItemDelegate(parent), first_(first) {}

QFont LinedRows::fontOf(const QFont& base, qsizetype line) const {
  QFont out = base;
  out.setBold(first_ == First::Bold && line == 0);
  return out;
}

int LinedRows::heightOf(const QString& text, const QFont& base, int width) const {
  int height = 2 * kPadY;
  const QStringList lines = text.split(QLatin1Char('\n'));
  for (qsizetype i = 0; i < lines.size(); ++i)
    height += QFontMetrics(fontOf(base, i))
                  .boundingRect(QRect(0, 0, width, kAnyHeight), Qt::TextWordWrap, lines[i])
                  .height() +
              kLineGap;
  return height;
}

/// Of size 0 when the item has none, otherwise with the gap beside it.
QSize LinedRows::iconOf(const QStyleOptionViewItem& option, const QModelIndex& index) {
  if (index.data(Qt::DecorationRole).isNull()) return {0, 0};
  const auto* view = qobject_cast<const QAbstractItemView*>(option.widget);
  const QSize size = view != nullptr ? view->iconSize() : option.decorationSize;
  return {size.width() + kByIcon, size.height()};
}

QSize LinedRows::sizeHint(const QStyleOptionViewItem& option, const QModelIndex& index) const {
  const auto* view = qobject_cast<const QAbstractItemView*>(option.widget);
  const int width = view != nullptr ? view->viewport()->width() : option.rect.width();
  const QSize icon = iconOf(option, index);
  const int room = width - 2 * kPadX - icon.width();
  return {width, std::max(heightOf(index.data().toString(), option.font, room),
                          icon.height() + 2 * kPadY)};
}

void LinedRows::paint(QPainter* painter, const QStyleOptionViewItem& option,
                      const QModelIndex& index) const {
  const DeskColours& c = deskColours();
  const bool chosen = option.state.testFlag(QStyle::State_Selected);
  painter->save();
  if (chosen) painter->fillRect(option.rect, c.accent);
  QRect at = option.rect.adjusted(kPadX, kPadY, -kPadX, 0);
  if (const QSize icon = iconOf(option, index); icon.width() > 0) {
    index.data(Qt::DecorationRole)
        .value<QIcon>()
        .paint(painter, QRect(at.topLeft(), QSize(icon.width() - kByIcon, icon.height())),
               Qt::AlignCenter, chosen ? QIcon::Selected : QIcon::Normal);
    at.setLeft(at.left() + icon.width());
  }
  const bool allQuiet = index.data(Qt::ForegroundRole).isValid();
  const QStringList lines = index.data().toString().split(QLatin1Char('\n'));
  for (qsizetype i = 0; i < lines.size(); ++i) {
    const bool quiet = allQuiet || (first_ == First::Bold && i >= kQuietFrom);
    painter->setFont(fontOf(option.font, i));
    painter->setPen(chosen ? c.onAccent : quiet ? c.quiet : c.ink);
    QRect drawn;
    painter->drawText(QRect(at.topLeft(), QSize(at.width(), kAnyHeight)), Qt::TextWordWrap,
                      lines[i], &drawn);
    at.setTop(drawn.bottom() + 1 + kLineGap);
  }
  painter->setPen(c.line);
  painter->drawLine(option.rect.bottomLeft(), option.rect.bottomRight());
  if (option.state.testFlag(QStyle::State_HasFocus) && chosen) {
    painter->setPen(QPen(c.onAccent, 1, Qt::DotLine));
    painter->drawRect(option.rect.adjusted(2, 2, -3, -3));
  }
  painter->restore();
}

}  // namespace tw
