// "How large can she be?": the three answers for the selected figure, whole, cut by the border and
// over it, each in a sentence, and taken by lens and lens shift where the rough can hold it.
#pragma once

#include <QWidget>

#include <array>
#include <optional>

#include "command/fit.h"
#include "desk/errand.h"
#include "desk/staging_station_hand.h"

class QDoubleSpinBox;
class QLabel;
class QPushButton;

namespace tw {

class FitControls final : public QWidget {
  Q_OBJECT

 public:
  FitControls(PanelInHand& hand, QWidget* parent);

 private:
  enum Answer { Whole, Cut, Over };
  void ask();
  QString answeredFor() const;
  void trace();
  void take(Answer answer);
  std::optional<Fit> fitOf(Answer answer) const;
  QString whyNot(Answer answer) const;  ///< empty: it can be taken
  void refresh();

  PanelInHand& hand_;
  Errand errand_;
  QPushButton* ask_ = nullptr;
  QDoubleSpinBox* margin_ = nullptr;
  QLabel* state_ = nullptr;
  std::array<QLabel*, 3> sentences_{};
  std::array<QPushButton*, 3> takes_{};
  std::optional<FitAnswers> answers_;
  QString trouble_;
  Staging askedIn_;
};

}  // namespace tw
