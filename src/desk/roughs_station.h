// Finding, looking at, ranking, pinning, mixing and comparing the roughs of a page, with the shown
// one large under the hand.
#pragma once

#include <QList>

#include <optional>

#include "desk/page_edit_tool.h"
#include "desk/page_view.h"
#include "desk/pin_tool.h"
#include "desk/station.h"
#include "desk/tool_pile.h"

class QAction;
class QLabel;
class QStackedWidget;
class QVBoxLayout;

namespace tw {

class ComparePanel;
class RoughActs;
class RoughGallery;
class RoughSearch;

class RoughsStation final : public Station {
  Q_OBJECT

 public:
  RoughsStation(Document& document, Engine& engine, QWidget* parent = nullptr);

  QString actionName() const override { return QStringLiteral("goRoughs"); }
  QString title() const override { return tr("Roughs"); }
  QString purpose() const override {
    return tr("Find pages for the script, compare them and make one of them yours");
  }
  void arrive() override;
  void leave() override;

  PageView& view() { return *view_; }

 private:
  void makeActs();
  QWidget* makeLeft();
  QWidget* makeMiddle();
  QWidget* makeBar();
  void showState();
  void say(const QString& words);
  void nameTaking();
  void stepRough(int by);
  void mark();
  void findUnlike();
  void compare();
  void takePanel(bool arrangement);
  std::string otherMarked() const;
  void showPage();

  RoughActs* acts_ = nullptr;
  RoughSearch* search_ = nullptr;
  RoughGallery* gallery_ = nullptr;
  PageView* view_ = nullptr;
  PinTool* pins_ = nullptr;
  PageEditTool* edit_ = nullptr;
  std::optional<ToolPile> tools_;
  ComparePanel* compare_ = nullptr;
  QStackedWidget* middle_ = nullptr;
  QLabel* said_ = nullptr;
  QAction *pick_ = nullptr, *up_ = nullptr, *down_ = nullptr, *drop_ = nullptr, *mark_ = nullptr,
          *compareAct_ = nullptr, *pinPanel_ = nullptr, *pinArrangement_ = nullptr,
          *takePanel_ = nullptr, *takeArrangement_ = nullptr;
};

}  // namespace tw
