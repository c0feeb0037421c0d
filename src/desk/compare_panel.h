// Two roughs of the page side by side, what differs set off on both pictures and told below: rule
// by rule, the largest difference first, then panel by panel.
#pragma once

#include <QWidget>

#include <string>
#include <vector>

#include "desk/rough_thumb.h"
#include "review/compare_roughs.h"

class QLabel;
class QListWidget;

namespace tw {

class ComparePanel final : public QWidget {
  Q_OBJECT

 public:
  explicit ComparePanel(Document& document, QWidget* parent = nullptr);

  void show(const std::string& a, const std::string& b);
  /// Back to the page.
  void putAway();
  bool isShowing() const { return !a_.empty(); }

 signals:
  void closed();
  void mixAsked(const QString& from, const QString& into, std::size_t panelOfInto);

 private:
  struct Line {
    std::size_t panelA, panelB;  ///< to be pointed at; nobody: npos
  };
  QWidget* makeSide(QLabel*& head, RoughThumb*& thumb, const char* name);
  void takeDocument();
  void fillList(const RoughComparison& difference);
  void addLine(const QString& words, Line line);
  void point(int row);
  void markPanels(const RoughComparison& difference);

  Document& document_;
  std::string a_, b_;
  RoughThumb *first_ = nullptr, *second_ = nullptr;
  QLabel *headA_ = nullptr, *headB_ = nullptr;
  QListWidget* list_ = nullptr;
  std::vector<Line> lines_;
};

}  // namespace tw
