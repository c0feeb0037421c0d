#include "desk/lined_rows.h"

#include <QAbstractItemView>
#include <QPainter>

#include "desk/look.h"

namespace tw {

namespace {

constexpr int kPadX = 8, kPadY = 6, kLineGap = 1;
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
    height +=
        QFontMetrics(fontOf(base, i))
            .boundingRect(QRect(0, 0, width - 2 * kPadX, kAnyHeight), Qt::TextWordWrap, lines[i])
            .height() +
        kLineGap;
  return height;
}

QSize LinedRows::sizeHint(const QStyleOptionViewItem& option, const QModelIndex& index) const {
  const auto* view = qobject_cast<const QAbstractItemView*>(option.widget);
  const int width = view != nullptr ? view->viewport()->width() : option.rect.width();
  return {width, heightOf(index.data().toString(), option.font, width)};
}

void LinedRows::paint(QPainter* painter, const QStyleOptionViewItem& option,
                      const QModelIndex& index) const {
  const DeskColours& c = deskColours();
  const bool chosen = option.state.testFlag(QStyle::State_Selected);
  painter->save();
  if (chosen) painter->fillRect(option.rect, c.accent);
  QRect at = option.rect.adjusted(kPadX, kPadY, -kPadX, 0);
  const QStringList lines = index.data().toString().split(QLatin1Char('\n'));
  for (qsizetype i = 0; i < lines.size(); ++i) {
    const bool quiet = first_ == First::Bold && i >= kQuietFrom;
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
