// The way of a page as a line with a stop for each station; where one stands is filled.
#pragma once

#include <QList>
#include <QWidget>

class QAction;

namespace tw {

class WayBar final : public QWidget {
  Q_OBJECT

 public:
  /// Checkable actions of one group, in order; they stay their owner's.
  explicit WayBar(const QList<QAction*>& stops, QWidget* parent = nullptr);
  QSize sizeHint() const override;

 protected:
  void paintEvent(QPaintEvent*) override;
};

}  // namespace tw
