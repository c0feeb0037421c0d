// Undo in fields: as long as something is typed that is not yet an edit, Ctrl+Z takes back letters;
// afterwards it takes back edits, as everywhere else.
#pragma once

#include <QObject>

namespace tw {

class FieldUndo final : public QObject {
  Q_OBJECT

 public:
  using QObject::QObject;

  /// Install on the application.
  bool eventFilter(QObject* watched, QEvent* event) override;
};

}  // namespace tw
