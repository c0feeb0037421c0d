// How light a grey looks: luminance, CIE lightness L*, Munsell value and sRGB, each as published.
// Luminance is a share of a white paper's, 0 … 1.
#pragma once

#include <array>

namespace tw {

/// sRGB signal (0 … 1) of a linear value, and back; IEC 61966-2-1:1999.
double srgbOf(double linear);
double linearOf(double srgb);

/// CIE 1976 L*, 0 … 100, and back.
double lightnessOf(double luminance);
double luminanceOf(double lightness);

/// Luminance of a Munsell value 0 … 10 relative to a perfect diffuser; ASTM D1535.
double luminanceOfMunsell(double value);

/// The four steps of a value plan, by equal steps of L*.
enum class ValueStep : unsigned char { Paper, Light, Dark, Black };
inline constexpr std::size_t kValueSteps = 4;
/// The step whose lightness is nearest.
ValueStep stepOf(double lightness);
double lightnessOf(ValueStep step);
/// Ink of a step's flat tone as drawings hold it: 0 paper … 1 black, the sRGB signal's complement.
double darknessOf(ValueStep step);

}  // namespace tw
