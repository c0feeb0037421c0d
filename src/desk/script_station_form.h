// What the artist may correct of one beat, a row for each: what it is, the words or numbers that
// are allowed, and the way back to what the script says. A refused value says why below its row.
#pragma once

#include <QWidget>

#include <vector>

#include "command/beat_choices.h"

class QFormLayout;
class QLabel;
class QPushButton;

namespace tw {

class BeatForm final : public QWidget {
  Q_OBJECT

 public:
  explicit BeatForm(QWidget* parent = nullptr);
  void show(const std::vector<BeatChoice>& choices);
  /// Below the row of that key; empty takes it away.
  void tell(const QString& key, const QString& sentence);

 signals:
  /// "shot", "close-up"; "guess" goes back.
  void corrected(const QString& key, const QString& value);

 protected:
  bool eventFilter(QObject* watched, QEvent* event) override;

 private:
  struct Row {
    BeatChoice choice;
    QWidget* control = nullptr;
    QPushButton* back = nullptr;
    QLabel* trouble = nullptr;
  };

  void build(const std::vector<BeatChoice>& choices);
  QWidget* makeControl(const BeatChoice& choice);
  void fill(Row& row);
  void send(const std::string& key, const QString& value);

  QWidget* body_ = nullptr;
  std::vector<Row> rows_;
  bool filling_ = false;
  int sending_ = 0;  ///< a control of its own is in the middle of a call
};

}  // namespace tw
