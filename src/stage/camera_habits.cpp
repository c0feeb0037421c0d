#include "stage/camera_habits.h"

#include <array>
#include <cmath>

namespace tw {

double usualLens(ShotSize shot, EyeHeight eye) {
  constexpr std::array<double, kShotSizes> kLens{95, 85, 75, 60, 50, 42, 34, 28};
  const double wider = eye == EyeHeight::Worm ? 0.62 : eye == EyeHeight::Low ? 0.85 : 1.0;
  return kLens[static_cast<std::size_t>(shot)] * wider;
}

double elevationDeg(EyeHeight eye, ShotSize shot) {
  const bool far = shot >= ShotSize::VeryLong;
  switch (eye) {
    case EyeHeight::Worm:
      return -34;
    case EyeHeight::Low:
      return -15;
    case EyeHeight::Level:
      return 0;
    case EyeHeight::High:
      return far ? 18 : 28;
    case EyeHeight::Bird:
      return far ? 38 : 50;
  }
  return 0;
}

double lensStretch(double aspect) {
  constexpr double kStill = 1.5;  // 36 × 24 mm, the frame for which the lenses are named
  return aspect < kStill ? kStill / aspect : std::sqrt(kStill / aspect);
}

bool isWholeShot(ShotSize shot) {
  return shot >= ShotSize::Long;
}

bool holdsLevel(ShotSize shot, Level level) {
  switch (level) {
    case Level::Head:
      return true;
    case Level::Shoulders:
      return shot >= ShotSize::MediumCloseUp;
    case Level::Torso:
      return shot >= ShotSize::Medium;
    case Level::Hips:
      return shot >= ShotSize::MediumLong;
    case Level::Arm:
    case Level::Hand:
    case Level::Thigh:
    case Level::Shank:
    case Level::Foot:
      return isWholeShot(shot);
  }
  return false;
}

}  // namespace tw
