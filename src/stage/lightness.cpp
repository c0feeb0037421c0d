#include "stage/lightness.h"

#include <algorithm>
#include <cmath>

namespace tw {

namespace {

constexpr double kLinearFoot = 216.0 / 24389;  // CIE 15: below it L* runs straight
constexpr double kFootSlope = 24389.0 / 27;
constexpr double kStepLightness = 100.0 / (kValueSteps - 1);

}  // namespace

double srgbOf(double linear) {
  return linear <= 0.0031308 ? 12.92 * linear : 1.055 * std::pow(linear, 1 / 2.4) - 0.055;
}

double linearOf(double srgb) {
  return srgb <= 0.04045 ? srgb / 12.92 : std::pow((srgb + 0.055) / 1.055, 2.4);
}

double lightnessOf(double luminance) {
  return luminance > kLinearFoot ? 116 * std::cbrt(luminance) - 16 : kFootSlope * luminance;
}

double luminanceOf(double lightness) {
  return lightness > kFootSlope * kLinearFoot ? std::pow((lightness + 16) / 116, 3)
                                              : lightness / kFootSlope;
}

double luminanceOfMunsell(double v) {
  return v * (1.1914 + v * (-0.22533 + v * (0.23352 + v * (-0.020484 + v * 0.00081939)))) / 100;
}

ValueStep stepOf(double lightness) {
  const double fromBlack = std::clamp(std::round(lightness / kStepLightness), 0.0, 3.0);
  return static_cast<ValueStep>(3 - static_cast<int>(fromBlack));
}

double lightnessOf(ValueStep step) {
  return kStepLightness * (3 - static_cast<int>(step));
}

double darknessOf(ValueStep step) {
  return 1 - srgbOf(luminanceOf(lightnessOf(step)));
}

}  // namespace tw
