// The selected figure: which one, which way it faces and looks, its pose flipped or as the library
// has it, what is pinned, and what is measured of it.
#pragma once

#include <QWidget>

#include "desk/staging_station_dial.h"
#include "desk/staging_station_hand.h"

class QComboBox;
class QLabel;
class QPushButton;

namespace tw {

class FigureControls final : public QWidget {
  Q_OBJECT

 public:
  FigureControls(PanelInHand& hand, QWidget* parent);

 private:
  void addDials();
  void addButtons();
  SetFigure present() const;
  void set(const Staging& staging, const QString& what, bool meant, int merge);
  void turnDial(NumberDial* dial, const QString& what, int merge,
                Staging (FigureControls::*made)(const Staging&, double) const);
  Staging headed(const Staging& from, double deg) const;
  Staging gazing(const Staging& from, double deg) const;
  Staging risen(const Staging& from, double metres) const;
  void lookAt(int index);
  void listFigures();
  void refresh();

  PanelInHand& hand_;
  QComboBox *who_ = nullptr, *looksAt_ = nullptr;
  NumberDial *heading_ = nullptr, *gaze_ = nullptr, *height_ = nullptr;
  QPushButton *flip_ = nullptr, *asPosed_ = nullptr, *pin_ = nullptr;
  QStringList listed_;
};

/// What is measured of the selected figure, a few lines; grey while it is being measured again.
class FigureMeasures final : public QWidget {
  Q_OBJECT

 public:
  FigureMeasures(PanelInHand& hand, Engine& engine, QWidget* parent);

 private:
  void refresh();
  QString rankInWords() const;
  QString poseInWords() const;
  static QString cutInWords(const SeenFigure& seen);

  PanelInHand& hand_;
  Engine& engine_;
  QLabel *name_ = nullptr, *words_ = nullptr, *state_ = nullptr;
};

}  // namespace tw
