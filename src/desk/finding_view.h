// One finding in full: what was measured, why it matters, what was tried against it with buttons to
// try, keep and drop, and the artist's own answer. It only shows and asks; the panel around it
// acts.
#pragma once

#include <QWidget>

#include "job/finding.h"

class QLabel;
class QLineEdit;
class QPushButton;
class QVBoxLayout;

namespace tw {

enum class RemedyState {
  Resting,   ///< not looked for while something else is being tried
  Computed,  ///< the finding's `tried` is what there is
  Running
};

class FindingView final : public QWidget {
  Q_OBJECT

 public:
  explicit FindingView(QWidget* parent = nullptr);

  /// Null: nothing is chosen.
  void showFinding(const Finding* finding, RemedyState state);
  /// A remedy is being tried, and what it does to the page; nothing: none is.
  void showTried(std::optional<std::size_t> remedy, const QString& words);
  void showProgress(const QString& words);
  void showTrouble(const QString& words);

 signals:
  void tryAsked(std::size_t remedy);
  void keepAsked(std::size_t remedy);
  void dropAsked();
  void silenceAsked(const QString& reason);
  void unsilenceAsked();

 private:
  QLabel* addLabel(const char* name, const char* property = nullptr);
  void fillRemedies(const Finding& finding);
  QWidget* remedyRow(const Finding& finding, std::size_t index);

  QVBoxLayout* down_ = nullptr;
  QLabel *where_ = nullptr, *reason_ = nullptr, *measure_ = nullptr, *remedy_ = nullptr;
  QLabel *state_ = nullptr, *tried_ = nullptr, *trouble_ = nullptr, *answer_ = nullptr;
  QWidget* remedies_ = nullptr;
  QPushButton *drop_ = nullptr, *silence_ = nullptr, *unsilence_ = nullptr;
  QLineEdit* why_ = nullptr;
};

/// "must, panel 3: …" with the amount and its limit, as the terminal tells it.
QString findingTitle(const Finding& finding);

}  // namespace tw
