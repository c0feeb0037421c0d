// The shown rough's score card: what it costs, rule by rule, the dearest first, made again while a
// hand drags. While something is tried each line says how it differs from what is kept.
#pragma once

#include <QWidget>

#include <vector>

#include "desk/page_view.h"

class QLabel;
class QListWidget;

namespace tw {

class ScoreCardPanel final : public QWidget {
  Q_OBJECT

 public:
  /// A click on a line points out its panel on the view.
  ScoreCardPanel(Document& document, Engine& engine, PageView& view, QWidget* parent = nullptr);

 private:
  void takeMeasured();
  void showHead(const Rough& now, const Rough& kept);
  void pointOut(int row);

  Document& document_;
  Engine& engine_;
  PageView& view_;
  QLabel* head_ = nullptr;
  QListWidget* list_ = nullptr;
  std::vector<int> panels_;  ///< of each row, from 1; 0: the page
};

}  // namespace tw
