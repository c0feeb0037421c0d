// How measured amounts are written wherever a finding is told: "7.9 mm", "1 joint", "60 %".
#pragma once

#include <string>

namespace tw {

/// Whole numbers from 20 on or where the number is whole; one decimal else. A unit in the plural
/// loses its s for exactly one.
std::string amountInWords(double value, const std::string& unit);

}  // namespace tw
