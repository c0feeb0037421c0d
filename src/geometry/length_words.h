// Lengths as people write them: "12.5", "12,5 mm", "3.25 in", "1/2 in", "3 1/4\"", "2 cm", "6 pt".
// Read to millimetres and written back in millimetres or inches.
#pragma once

#include <string>
#include <string_view>

#include "base/result.h"

namespace tw {

enum class LengthUnit { Millimetres, Inches };

inline constexpr double kMmPerInch = 25.4;  ///< exactly, by international agreement of 1959

/// Millimetres. A number without a unit is taken in `unit`. Bad input says what was expected.
Result<double> readLength(std::string_view words, LengthUnit unit = LengthUnit::Millimetres);

/// "12.5 mm" to a hundredth, "3.25 in" to a thousandth; without zeros at the end.
std::string lengthWords(double mm, LengthUnit unit = LengthUnit::Millimetres);

}  // namespace tw
