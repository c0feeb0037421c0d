// The things of the panel in hand: who holds each and in which hand, and how those that nobody
// holds stand.
#pragma once

#include <QWidget>

#include "desk/staging_station_dial.h"
#include "desk/staging_station_hand.h"

class QComboBox;
class QLabel;
class QListWidget;

namespace tw {

class ThingControls final : public QWidget {
  Q_OBJECT

 public:
  ThingControls(PanelInHand& hand, QWidget* parent);

 private:
  int thing() const;  ///< into the staging's props, −1: none
  bool isHauled(int thing) const;
  QString placeInWords(std::size_t thing) const;
  void addDials();
  void setHand(int index);
  void setThing(const SetProp& prop, const QString& what, bool meant, int merge);
  void listThings();
  void refresh();

  PanelInHand& hand_;
  QListWidget* list_ = nullptr;
  QLabel* none_ = nullptr;
  QComboBox* inHand_ = nullptr;
  NumberDial *heading_ = nullptr, *lean_ = nullptr, *height_ = nullptr;
};

}  // namespace tw
