#include "desk/staging_station_dial.h"

#include <QDoubleSpinBox>
#include <QHBoxLayout>
#include <QLabel>
#include <QSignalBlocker>
#include <QSlider>
#include <QVBoxLayout>

#include <algorithm>
#include <cmath>
#include <utility>

#include "desk/look.h"

namespace tw {

namespace {

constexpr int kSteps = 1000;
constexpr int kFieldWide = 108;

}  // namespace

NumberDial::NumberDial(const QString& title, const QString& name, const QString& unit,
                       const Range& range, QWidget* parent)
    : QWidget(parent), range_(range) {
  setObjectName(name);
  auto* grid = new QGridLayout(this);
  grid->setContentsMargins(0, 0, 0, 0);
  grid->setVerticalSpacing(0);
  grid->setHorizontalSpacing(6);
  auto* label = new QLabel(title, this);
  label->setMinimumWidth(92);
  slider_ = new QSlider(Qt::Horizontal, this);
  slider_->setObjectName(name + QStringLiteral("Slider"));
  slider_->setAccessibleName(title);
  slider_->setRange(0, kSteps);
  slider_->setMinimumWidth(80);
  field_ = new QDoubleSpinBox(this);
  field_->setObjectName(name + QStringLiteral("Field"));
  field_->setAccessibleName(title);
  field_->setRange(range.least, range.most);
  field_->setSingleStep(range.step);
  field_->setDecimals(range.decimals);
  field_->setSuffix(unit);
  field_->setWrapping(range.goesRound);
  field_->setKeyboardTracking(false);
  field_->setFixedWidth(kFieldWide);
  label->setBuddy(field_);
  grid->addWidget(label, 0, 0);
  grid->addWidget(slider_, 0, 1);
  grid->addWidget(field_, 0, 2);
  grid->setColumnStretch(1, 1);
  connect(slider_, &QSlider::valueChanged, this, &NumberDial::sliderMoved);
  connect(slider_, &QSlider::sliderReleased, this, [this] {
    if (std::exchange(drawn_, false)) emit turned(field_->value(), true);
  });
  connect(field_, qOverload<double>(&QDoubleSpinBox::valueChanged), this, [this](double value) {
    const QSignalBlocker quiet(slider_);
    slider_->setValue(toSlider(value));
    emit turned(value, true);
  });
}

double NumberDial::fromSlider(int at) const {
  const double share = static_cast<double>(at) / kSteps;
  if (range_.byRatio) return range_.least * std::pow(range_.most / range_.least, share);
  return range_.least + share * (range_.most - range_.least);
}

int NumberDial::toSlider(double value) const {
  const double within = std::clamp(value, range_.least, range_.most);
  const double share = range_.byRatio
                           ? std::log(within / range_.least) / std::log(range_.most / range_.least)
                           : (within - range_.least) / (range_.most - range_.least);
  return static_cast<int>(std::lround(share * kSteps));
}

void NumberDial::sliderMoved(int at) {
  const QSignalBlocker quiet(field_);
  field_->setValue(fromSlider(at));
  drawn_ = slider_->isSliderDown();
  emit turned(field_->value(), !slider_->isSliderDown());
}

void NumberDial::show(double value) {
  const QSignalBlocker quietField(field_), quietSlider(slider_);
  // A number that is being typed is not taken away; one that only differs by rounding stays.
  if (!slider_->isSliderDown()) slider_->setValue(toSlider(value));
  if (std::abs(field_->value() - value) > 0.5 * std::pow(10, -range_.decimals))
    field_->setValue(value);
}

}  // namespace tw
