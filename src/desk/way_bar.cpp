#include "desk/way_bar.h"

#include <QAction>
#include <QHBoxLayout>
#include <QPainter>
#include <QToolButton>

#include "desk/look.h"

namespace tw {

namespace {

constexpr int kHighPx = 44, kGapPx = 26;

}  // namespace

WayBar::WayBar(const QList<QAction*>& stops, QWidget* parent) : QWidget(parent) {
  setObjectName(QStringLiteral("wayBar"));
  setAccessibleName(tr("Stations"));
  auto* row = new QHBoxLayout(this);
  row->setContentsMargins(0, 0, 0, 0);
  row->setSpacing(kGapPx);
  for (QAction* stop : stops) {
    auto* button = new QToolButton(this);
    button->setDefaultAction(stop);
    button->setToolButtonStyle(Qt::ToolButtonTextOnly);
    button->setAccessibleName(stop->text());
    row->addWidget(button);
  }
}

QSize WayBar::sizeHint() const {
  return {layout()->sizeHint().width(), kHighPx};
}

void WayBar::paintEvent(QPaintEvent*) {
  QPainter painter(this);
  painter.setPen(QPen(deskColours().quiet, 2));
  const int y = height() / 2;
  QWidget* before = nullptr;
  for (int i = 0; i < layout()->count(); ++i) {
    QWidget* stop = layout()->itemAt(i)->widget();
    if (before != nullptr)
      painter.drawLine(before->geometry().right() + 1, y, stop->geometry().left() - 1, y);
    before = stop;
  }
}

}  // namespace tw
