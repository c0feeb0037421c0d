// The page as it goes on the board: the artist's own lines over the rough, pictures to work over,
// and the sheet to print and pencil on.
#pragma once

#include <memory>

#include "desk/page_view.h"
#include "desk/station.h"

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
  PageView* view_ = nullptr;
};

}  // namespace tw
