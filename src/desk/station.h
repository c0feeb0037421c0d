// One place of work at the desk, named by a stage of the trade. The window shows one at a time.
#pragma once

#include <QString>
#include <QWidget>

#include "desk/document.h"
#include "desk/engine.h"

namespace tw {

class Station : public QWidget {
  Q_OBJECT

 public:
  Station(Document& document, Engine& engine, QWidget* parent = nullptr);

  /// Object name of the action that goes there: "goScript".
  virtual QString actionName() const = 0;
  virtual QString title() const = 0;
  /// What it is for, in one sentence.
  virtual QString purpose() const = 0;
  /// It comes into sight, or goes.
  virtual void arrive() {}
  virtual void leave() {}

 protected:
  Document& document_;
  Engine& engine_;
};

}  // namespace tw
