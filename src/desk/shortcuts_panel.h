// Every command that a key calls now, with its key.
#pragma once

#include <QWidget>

namespace tw {

class ShortcutsPanel final : public QWidget {
  Q_OBJECT

 public:
  /// Lists the actions of `desk` and of what is seen in it.
  explicit ShortcutsPanel(QWidget& desk);
};

}  // namespace tw
