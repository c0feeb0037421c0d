// Staging by hand: one panel large and drawn as it prints, its joints, gaze, figures and things to
// take hold of, and beside it the pose shelf, the camera, the light, other poses and how large a
// figure can be.
#pragma once

#include <memory>

#include "desk/page_view.h"
#include "desk/staging_station_hand.h"
#include "desk/staging_tool.h"
#include "desk/station.h"

class QActionGroup;
class QButtonGroup;
class QLabel;
class QLayout;
class QStackedWidget;
class QToolButton;

namespace tw {

class StagingStation final : public Station {
  Q_OBJECT

 public:
  StagingStation(Document& document, Engine& engine, QWidget* parent = nullptr);
  ~StagingStation() override;

  QString actionName() const override { return QStringLiteral("goStaging"); }
  QString title() const override { return tr("Staging"); }
  QString purpose() const override {
    return tr("Pose figures, place the camera and the light of one panel");
  }
  void arrive() override;
  void leave() override;

 private:
  QWidget* makeStage();
  QWidget* makeControls();
  void addModes(QLayout* row);
  void addPage(const QString& title, const char* name, QWidget* page);
  QAction* choice(QActionGroup* group, const QString& title, const char* name, const QString& key,
                  const QString& help);
  void showMode(StagingMode mode);
  void stepPanel(int by);
  void listPanels();
  void drawPanelButtons();

  PanelInHand* hand_;
  std::unique_ptr<StagingTool> tool_;
  PageView* view_ = nullptr;
  QLayout *panels_ = nullptr, *pageButtons_ = nullptr;
  QButtonGroup* panelGroup_ = nullptr;
  QActionGroup* pageGroup_ = nullptr;
  QStackedWidget* pages_ = nullptr;
  QLabel* said_ = nullptr;
};

}  // namespace tw
