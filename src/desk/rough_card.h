// One candidate of the page: its picture, name, score, strongest and weakest rule, and whether it
// is marked for comparing, mixing or "unlike these". The shown one is framed and has its own
// buttons: pick, up, down, drop.
#pragma once

#include <QFrame>

#include <string>

#include "desk/rough_thumb.h"

class QCheckBox;
class QLabel;

namespace tw {

class RoughCard final : public QFrame {
  Q_OBJECT

 public:
  RoughCard(Document& document, QWidget* parent = nullptr);

  void show(int page, const std::string& rough);
  const std::string& rough() const { return thumb_->rough(); }
  RoughThumb& thumb() { return *thumb_; }

  void setShown(bool shown);
  void setMarked(bool marked);
  bool isMarked() const;
  /// Where the artist's own buttons of the shown rough go.
  QWidget* buttonsPlace() { return buttons_; }

 signals:
  void asked();  ///< to be shown
  void markedChanged();
  void stepped(int by);  ///< to the next or former card

 protected:
  void mousePressEvent(QMouseEvent*) override;
  void keyPressEvent(QKeyEvent*) override;
  void paintEvent(QPaintEvent*) override;

 private:
  RoughThumb* thumb_ = nullptr;
  QLabel *head_ = nullptr, *strongest_ = nullptr, *weakest_ = nullptr;
  QCheckBox* mark_ = nullptr;
  QWidget* buttons_ = nullptr;
  Document& document_;
  bool shown_ = false;
};

}  // namespace tw
