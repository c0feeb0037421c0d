// A measure that is turned: a name, a slider for the hand and a field for figures, which always
// agree. Tells apart a slider that is being drawn (preview) and a value that is meant (an edit).
#pragma once

#include <QWidget>

class QDoubleSpinBox;
class QLabel;
class QSlider;

namespace tw {

class NumberDial final : public QWidget {
  Q_OBJECT

 public:
  struct Range {
    double least = 0, most = 1, step = 0.1;
    int decimals = 1;
    bool byRatio = false;  ///< equal ways of the slider are equal ratios
    bool goesRound = false;
  };
  /// `name` is the object name; the slider's is name + "Slider", the field's name + "Field".
  NumberDial(const QString& title, const QString& name, const QString& unit, const Range& range,
             QWidget* parent);

  /// Without a signal; while the slider is being drawn it is left alone.
  void show(double value);

 signals:
  /// `meant`: the slider was let go, or a number typed or stepped to.
  void turned(double value, bool meant);

 private:
  double fromSlider(int at) const;
  int toSlider(double value) const;
  void sliderMoved(int at);

  Range range_;
  bool drawn_ = false;  ///< the slider that is held has been moved
  QSlider* slider_;
  QDoubleSpinBox* field_;
};

}  // namespace tw
