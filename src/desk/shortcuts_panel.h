// Every action that a key calls now, with its key. What a tool does with arrows and Tab its station
// tells.
#pragma once

#include <QWidget>

class QTableWidget;

namespace tw {

class ShortcutsPanel final : public QWidget {
  Q_OBJECT

 public:
  /// Lists the actions of `desk` and of what is seen in it.
  explicit ShortcutsPanel(QWidget& desk);
  /// Another station is seen.
  void refresh();

 private:
  QWidget& desk_;
  QTableWidget* table_ = nullptr;
};

}  // namespace tw
