// Finding roughs: asked for here, run off the window's thread, told while it goes on, stopped at
// any time. What is found becomes one edit of the page.
#pragma once

#include <QWidget>

#include <string>
#include <vector>

#include "desk/errand.h"
#include "desk/workbench.h"

class QAction;
class QProgressBar;
class QSpinBox;
class QToolButton;

namespace tw {

struct FoundRoughs;
struct RoughsBefore;

class RoughSearch final : public QWidget {
  Q_OBJECT

 public:
  explicit RoughSearch(Document& document, QWidget* parent = nullptr);

  bool isRunning() const { return errand_.isRunning(); }
  /// `unlike`: roughs that stay and from which the new ones differ.
  void find(const std::vector<std::string>& unlike);
  void stop();

 signals:
  void unlikeAsked();
  void runningChanged(bool running);
  /// What the search has to say when it is done: pins not kept, demands not met.
  void said(const QString& words);

 private:
  void showProgress(const QString& what, double share);
  void showRunning(bool running);
  void take(int page, const RoughsBefore& before, Result<FoundRoughs> found);

  Document& document_;
  QAction *find_ = nullptr, *stop_ = nullptr, *unlike_ = nullptr;
  QToolButton* go_ = nullptr;
  QSpinBox* keep_ = nullptr;
  QProgressBar* bar_ = nullptr;
  std::uint64_t seed_ = 1;  ///< counts up, so that asking again looks at other arrangements
  int searched_ = 0;        ///< page
  Errand errand_;
};

}  // namespace tw
