// The light of the panel in hand: three lamps on a disc that is seen from the camera, their
// strengths, and the words that name a light.
#pragma once

#include <QImage>
#include <QWidget>

#include <array>
#include <optional>

#include "desk/staging_station_dial.h"
#include "desk/staging_station_hand.h"
#include "stage/light_moves.h"

class QComboBox;
class QLabel;
class QLineEdit;

namespace tw {

/// The disc: its middle is light from the eye, half way out from the side, the edge from behind.
/// The key is a round sun, the fill a square, the rim a triangle.
class LightDisc final : public QWidget {
  Q_OBJECT

 public:
  explicit LightDisc(QWidget* parent);
  void show(const SetLight& light);
  LampName lamp() const { return lamp_; }
  void chooseLamp(LampName lamp);
  QSize sizeHint() const override { return {230, 230}; }

 signals:
  void moved(tw::LampName lamp, tw::Point disc, bool meant);

 protected:
  void paintEvent(QPaintEvent*) override;
  void mousePressEvent(QMouseEvent* event) override;
  void mouseMoveEvent(QMouseEvent* event) override;
  void mouseReleaseEvent(QMouseEvent* event) override;
  void keyPressEvent(QKeyEvent* event) override;

 private:
  double radius() const;
  QPointF toView(Point disc) const;
  Point toDisc(QPointF px) const;

  SetLight light_;
  LampName lamp_ = LampName::Key;
  bool dragging_ = false;
  QImage ball_;  ///< a ball in that light
};

class LightControls final : public QWidget {
  Q_OBJECT

 public:
  LightControls(PanelInHand& hand, QWidget* parent);

 private:
  SetLight present() const;
  void set(const SetLight& light, const QString& what, bool meant, int merge);
  void setByWords(const QString& words);
  void refresh();

  PanelInHand& hand_;
  LightDisc* disc_ = nullptr;
  std::array<NumberDial*, 3> strengths_{};
  NumberDial* ambient_ = nullptr;
  QComboBox* named_ = nullptr;
  QLineEdit* words_ = nullptr;
  QLabel *title_ = nullptr, *trouble_ = nullptr;
};

}  // namespace tw
