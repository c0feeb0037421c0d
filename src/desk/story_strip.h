// The story as a strip of spreads in reading order: each page small with the rough that stands for
// it, the present one framed, a turned leaf between spreads. A click goes there.
#pragma once

#include <QAbstractButton>
#include <QScrollArea>

#include <vector>

#include "desk/engine.h"
#include "desk/rough_pictures.h"

namespace tw {

/// One page, or a spread drawn over both leaves, as a button.
class PageChip final : public QAbstractButton {
  Q_OBJECT

 public:
  PageChip(Document& document, int page, QWidget* parent = nullptr);

  int page() const { return page_; }
  void takeDocument();
  QSize sizeHint() const override;

 protected:
  void paintEvent(QPaintEvent*) override;

 private:
  Document& document_;
  RoughPictures& pictures_;
  int page_;
};

class StoryStrip final : public QScrollArea {
  Q_OBJECT

 public:
  StoryStrip(Document& document, Engine& engine, QWidget* parent = nullptr);

  PageChip* chip(int page) const;

 protected:
  void wheelEvent(QWheelEvent*) override;
  void resizeEvent(QResizeEvent*) override;
  bool eventFilter(QObject* watched, QEvent* event) override;

 private:
  void build();
  void fitHeight();
  void takeDocument();
  void showShown();
  void step(int by);

  Document& document_;
  std::vector<PageChip*> chips_;
  std::vector<int> numbers_;  ///< of the pages that the chips are for
  bool rightToLeft_ = false;
};

}  // namespace tw
