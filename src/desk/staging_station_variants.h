// "What if she raised this arm?": poses near the present one that read better or otherwise, as
// pictures of the panel with what they change.
#pragma once

#include <QImage>
#include <QWidget>

#include <vector>

#include "desk/errand.h"
#include "desk/staging_station_hand.h"

class QLabel;
class QPushButton;

namespace tw {

class PictureShelf;

class VariantStrip final : public QWidget {
  Q_OBJECT

 public:
  VariantStrip(PanelInHand& hand, QWidget* parent);

 private:
  struct Shown {
    QString name, facts;
    Staging staging;
    QImage picture;
  };
  static std::vector<Shown> found(const MeasurementPtr& measurement, RoughPanel panel,
                                  std::size_t index, std::size_t figure, QSize picture);
  void find();
  void take(std::vector<Shown> shown);
  void refresh();

  PanelInHand& hand_;
  Errand errand_;
  QPushButton* find_ = nullptr;
  QLabel* state_ = nullptr;
  PictureShelf* shelf_ = nullptr;
  std::vector<Shown> shown_;
  QString foundFor_;  ///< name of the figure
  Staging foundIn_;   ///< the staging that they vary
};

}  // namespace tw
