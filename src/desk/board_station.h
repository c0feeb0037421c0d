// The page as it goes on the board: the artist's own lines over the rough, pictures to work over,
// and the sheet to print and pencil on.
#pragma once

#include <functional>

#include "desk/errand.h"
#include "desk/page_view.h"
#include "desk/pen_tool.h"
#include "desk/station.h"
#include "desk/underlay_edit.h"

class QBoxLayout;
class QLabel;
class QSlider;
class QPushButton;

namespace tw {

class BoardStation final : public Station {
  Q_OBJECT

 public:
  BoardStation(Document& document, Engine& engine, QWidget* parent = nullptr);

  QString actionName() const override { return QStringLiteral("goBoard"); }
  QString title() const override { return tr("Board"); }
  QString purpose() const override {
    return tr("Draw over the rough and print what goes on the board");
  }
  void arrive() override;

 private:
  void makePens(QBoxLayout& column);
  void makeUnderlays(QBoxLayout& column);
  void makePrinting(QBoxLayout& column);
  void changeStrokes(const QString& what, PenStroke (*change)(PenStroke, const Rect&));
  void clearStrokes();
  void lay(std::function<Result<ShelvedPicture>()> shelve);
  void print();
  void showState();

  PageView* view_ = nullptr;
  PenTool pen_;
  Errand printing_, shelving_;
  QLabel *penWidth_ = nullptr, *printed_ = nullptr;
  QSlider* strength_ = nullptr;
  QAction *takeAway_ = nullptr, *clear_ = nullptr;
};

}  // namespace tw
