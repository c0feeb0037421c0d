// The camera of the panel in hand as measures to turn: round and over what it looks at, in and out,
// eye height, lens, roll, and where in the frame the focus is.
#pragma once

#include <QWidget>

#include <functional>
#include <vector>

#include "desk/staging_station_dial.h"
#include "desk/staging_station_hand.h"

class QCheckBox;
class QComboBox;
class QLabel;

namespace tw {

class CameraControls final : public QWidget {
  Q_OBJECT

 public:
  CameraControls(PanelInHand& hand, QWidget* parent);

 private:
  using Read = std::function<double(const CameraPlace&)>;
  using Move = std::function<CameraPlace(const CameraPlace&, double)>;
  struct Row {
    NumberDial* dial;
    Read read;
  };
  void addDial(const QString& title, const char* name, const QString& unit,
               const NumberDial::Range& range, Read read, Move move);
  void addTurns();
  void addLens();
  void addPlace();
  CameraPlace placed(const CameraPlace& camera, Point wanted) const;
  Point focusIn(const CameraPlace& camera) const;
  void turn(std::size_t row, const Move& move, const QString& title, double value, bool meant);
  void refresh();

  PanelInHand& hand_;
  std::vector<Row> rows_;
  QCheckBox* keepsSize_ = nullptr;
  QComboBox *risesBy_ = nullptr, *placesBy_ = nullptr, *about_ = nullptr;
  QLabel* words_ = nullptr;
  Staging from_;  ///< when the slider was taken
  bool isTurning_ = false;
};

}  // namespace tw
