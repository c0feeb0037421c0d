#include "desk/copy_meter.h"

#include <QPainter>

#include <algorithm>

#include "desk/look.h"

namespace tw {

namespace {

constexpr int kBarPx = 9, kGapPx = 9;
constexpr double kFullAt = 0.8;  // of the bar's length is the limit; the rest is beyond it

}  // namespace

CopyMeter::CopyMeter(QWidget* parent) : QWidget(parent) {
  setObjectName(QStringLiteral("copyMeter"));
  setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
}

void CopyMeter::show(std::vector<MeterBar> bars) {
  if (bars == bars_) return;
  bars_ = std::move(bars);
  QStringList spoken;
  for (const MeterBar& bar : bars_)
    spoken << QStringLiteral("%1: %2").arg(bar.label, bar.figure) +
                  (bar.isOver() ? tr(", too much") : QString());
  setAccessibleName(tr("Room for copy"));
  setAccessibleDescription(spoken.join(QStringLiteral("; ")));
  updateGeometry();
  update();
}

int CopyMeter::rowHeight() const {
  return fontMetrics().height() + kBarPx + kGapPx;
}

QSize CopyMeter::sizeHint() const {
  return {260, std::max<int>(1, static_cast<int>(bars_.size())) * rowHeight()};
}

void CopyMeter::paintEvent(QPaintEvent*) {
  QPainter painter(this);
  const DeskColours& c = deskColours();
  int y = 0;
  for (const MeterBar& bar : bars_) {
    const QRect words(0, y, width(), fontMetrics().height());
    painter.setPen(c.ink);
    painter.drawText(words, Qt::AlignLeft | Qt::AlignVCenter, bar.label);
    painter.setPen(bar.isOver() ? c.warn : c.ink);
    painter.drawText(words, Qt::AlignRight | Qt::AlignVCenter,
                     bar.isOver() ? tr("%1, too much").arg(bar.figure) : bar.figure);
    const QRect whole(0, y + words.height() + 2, width() - 1, kBarPx);
    const int limit = static_cast<int>(whole.width() * kFullAt);
    const int filled =
        static_cast<int>(std::min(whole.width() * 1.0, whole.width() * kFullAt * bar.share));
    painter.fillRect(QRect(whole.topLeft(), QSize(std::min(filled, limit), kBarPx)), c.accent);
    if (filled > limit) {
      const QRect beyond(whole.left() + limit, whole.top(), filled - limit, kBarPx);
      painter.fillRect(beyond, QBrush(c.warn, Qt::BDiagPattern));
      painter.setPen(c.warn);
      painter.drawRect(beyond.adjusted(0, 0, 0, -1));
    }
    painter.setPen(c.quiet);
    painter.drawRect(whole);
    painter.setPen(QPen(c.ink, 2));
    painter.drawLine(whole.left() + limit, whole.top() - 2, whole.left() + limit,
                     whole.bottom() + 2);
    y += rowHeight();
  }
}

}  // namespace tw
