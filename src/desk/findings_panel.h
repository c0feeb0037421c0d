// The findings of the shown page, the gravest first, each with the mark that reading sheets give
// it. Choosing one points out its place and selects its panel; what would mend it is tried on a
// thread of its own and can be looked at on the page, kept as one edit, or dropped.
#pragma once

#include <QTimer>
#include <QWidget>

#include <optional>

#include "desk/edit_preview.h"
#include "desk/errand.h"
#include "desk/finding_view.h"
#include "desk/page_view.h"

class QLabel;
class QListWidget;

namespace tw {

class FindingsPanel final : public QWidget {
  Q_OBJECT

 public:
  FindingsPanel(Document& document, Engine& engine, PageView& view, QWidget* parent = nullptr);

 private:
  /// Findings with the stagings that mend the chosen one.
  struct Remedies {
    Finding finding;
    std::vector<Staging> stagings;
  };

  void takeMeasured();
  void fillList();
  void showHead();
  const Finding* current() const;
  void showCurrent();
  void pointOutCurrent();
  bool canSeek() const;
  void seekSoon();
  void seekRemedies();
  void takeRemedies(Result<Remedies> found);
  void tryRemedy(std::size_t index);
  void keepRemedy(std::size_t index);
  void dropRemedy();
  void showWhatItDoes();
  void answer(const QString& reason);
  void takeBack();
  void changePage(const QString& what, const std::function<Result<void>(Page&)>& how);

  Document& document_;
  Engine& engine_;
  PageView& view_;
  EditPreview preview_;
  Errand errand_;
  QTimer seeking_;
  QLabel* head_ = nullptr;
  QListWidget* list_ = nullptr;
  FindingView* detail_ = nullptr;
  MeasurementPtr base_;  ///< whose findings are listed
  std::optional<Remedies> remedies_;
  std::optional<std::size_t> tried_;
};

}  // namespace tw
