// Room and words of copy against what there is, as bars: full at the limit, hatched beyond it.
#pragma once

#include <QString>
#include <QWidget>

#include <vector>

namespace tw {

struct MeterBar {
  QString label;   ///< "Words in the panel"
  QString figure;  ///< "14 of 42"
  double share = 0;
  bool operator==(const MeterBar&) const = default;
  bool isOver() const { return share > 1; }
};

class CopyMeter final : public QWidget {
  Q_OBJECT

 public:
  explicit CopyMeter(QWidget* parent = nullptr);
  void show(std::vector<MeterBar> bars);
  const std::vector<MeterBar>& bars() const { return bars_; }
  QSize sizeHint() const override;
  QSize minimumSizeHint() const override { return sizeHint(); }

 protected:
  void paintEvent(QPaintEvent*) override;

 private:
  int rowHeight() const;
  std::vector<MeterBar> bars_;
};

}  // namespace tw
