// Lays widgets in a row and begins a new row where they do not fit any more, so that a bar of
// buttons never makes the window wider than the screen.
#pragma once

#include <QLayout>
#include <QList>

namespace tw {

class FlowLayout final : public QLayout {
 public:
  explicit FlowLayout(QWidget* parent = nullptr);
  ~FlowLayout() override;

  void addItem(QLayoutItem* item) override;
  int count() const override;
  QLayoutItem* itemAt(int index) const override;
  QLayoutItem* takeAt(int index) override;
  Qt::Orientations expandingDirections() const override { return {}; }
  bool hasHeightForWidth() const override { return true; }
  int heightForWidth(int width) const override;
  QSize minimumSize() const override;
  QSize sizeHint() const override { return minimumSize(); }
  void setGeometry(const QRect& rect) override;

 private:
  /// The height of all rows; moves the items when `moves`.
  int arrange(const QRect& rect, bool moves) const;

  QList<QLayoutItem*> items_;
};

}  // namespace tw
