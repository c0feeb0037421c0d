// Rows of a list in several lines: the first stands out, the last may be quiet, all of them wrap
// and none is cut. An item's icon stands before them.
#pragma once

#include <QStyledItemDelegate>

namespace tw {

class LinedRows final : public QStyledItemDelegate {
  Q_OBJECT

 public:
  enum class First { Plain, Bold };
  /// Lines of an item's text stand between line breaks. With a bold first line the last of three is
  /// quiet.
  explicit LinedRows(First first, QObject* parent = nullptr);

  void paint(QPainter* painter, const QStyleOptionViewItem& option,
             const QModelIndex& index) const override;
  QSize sizeHint(const QStyleOptionViewItem& option, const QModelIndex& index) const override;

 private:
  QFont fontOf(const QFont& base, qsizetype line) const;
  int heightOf(const QString& text, const QFont& base, int width) const;
  static QSize iconOf(const QStyleOptionViewItem& option, const QModelIndex& index);

  First first_;
};

}  // namespace tw
