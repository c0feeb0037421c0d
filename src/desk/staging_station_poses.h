// The pose shelf: every pose of the library drawn as the selected figure would stand in it,
// filtered by typing. The pictures are drawn off the window's thread, a few at a time.
#pragma once

#include <QImage>
#include <QWidget>

#include <map>

#include "desk/errand.h"
#include "desk/staging_station_hand.h"

class QCheckBox;
class QLabel;
class QLineEdit;

namespace tw {

class PictureShelf;

class PoseShelf final : public QWidget {
  Q_OBJECT

 public:
  PoseShelf(PanelInHand& hand, QWidget* parent);

 protected:
  void showEvent(QShowEvent*) override;

 private:
  void refresh();
  void fill();
  void drawSome();
  void tryPose(const QString& pose);
  void keepPose(const QString& pose);

  PanelInHand& hand_;
  Errand errand_;
  QLineEdit* words_ = nullptr;
  QCheckBox* mirrored_ = nullptr;
  QLabel* present_ = nullptr;
  PictureShelf* shelf_ = nullptr;
  QStringList waiting_;  ///< poses that have no picture yet
  std::string drawnFor_;
  bool isFilled_ = false;
};

}  // namespace tw
