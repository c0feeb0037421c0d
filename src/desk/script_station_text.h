// The script as it was received, line by line. The lines of the chosen panel are marked, the words
// of the chosen copy more so; a click or the cursor says which panel a line became.
#pragma once

#include <QPlainTextEdit>

#include "command/script_text.h"

namespace tw {

class ScriptSheet final : public QPlainTextEdit {
  Q_OBJECT

 public:
  explicit ScriptSheet(QWidget* parent = nullptr);
  void take(ScriptText script);
  const ScriptText& script() const { return script_; }
  /// Marks the beat and brings it into sight.
  void mark(const std::string& beat, const std::string& item = {});

 signals:
  /// The cursor went to a line; it may belong to no beat.
  void lineChosen(int line);

 protected:
  void paintEvent(QPaintEvent*) override;
  void changeEvent(QEvent* event) override;

 private:
  void showMarks();

  ScriptText script_;
  std::string beat_, item_;
  bool marking_ = false;
};

}  // namespace tw
