// Copy under the hand: the page with its balloons large, the words of every balloon to retype, how
// much room and how many words there are, and what the program finds about them.
#pragma once

#include <map>
#include <string>
#include <vector>

#include "desk/copy_tool.h"
#include "desk/page_view.h"
#include "desk/station.h"

class QAction;
class QLabel;
class QListWidget;
class QPlainTextEdit;
class QVBoxLayout;

namespace tw {

class CopyMeter;

class CopyStation final : public Station {
  Q_OBJECT

 public:
  CopyStation(Document& document, Engine& engine, QWidget* parent = nullptr);

  QString actionName() const override { return QStringLiteral("goCopy"); }
  QString title() const override { return tr("Copy"); }
  QString purpose() const override {
    return tr("Place balloons and tails, retype words, see what room they have");
  }
  void arrive() override;
  void leave() override;

  CopyTool& tool() { return *tool_; }
  PageView& view() { return *view_; }

 protected:
  bool eventFilter(QObject* watched, QEvent* event) override;

 private:
  struct Row {
    CopyPlace place;
    std::string beat;
    bool leftOut = false;
  };

  QWidget* makeBar();
  QWidget* makeSide();
  QWidget* makeWords();
  void listCopy();
  void listFindings();
  void showMeter();
  void showChosen();
  void chooseRow(int row);
  const CopyItem* scriptItem(const CopyPlace& place) const;
  const CopyItem* chosenScriptItem() const;
  std::string wordsNow(const CopyPlace& place) const;
  void countWords();
  /// What stands in the field becomes the words of the item that it was filled for.
  void setWords();
  void retype(const CopyPlace& place, const std::string& words);

  PageView* view_ = nullptr;
  CopyTool* tool_ = nullptr;
  QListWidget *list_ = nullptr, *findings_ = nullptr;
  QPlainTextEdit* words_ = nullptr;
  QLabel *count_ = nullptr, *about_ = nullptr, *told_ = nullptr;
  CopyMeter* meter_ = nullptr;
  QAction *broader_ = nullptr, *narrower_ = nullptr, *aim_ = nullptr, *place_ = nullptr,
          *asScript_ = nullptr, *set_ = nullptr;
  std::vector<Row> rows_;
  std::optional<CopyPlace> filledFor_;
  std::vector<Polygon> places_;  ///< by finding listed
  bool filling_ = false;
};

}  // namespace tw
