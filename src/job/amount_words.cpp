#include "job/amount_words.h"

#include <fmt/format.h>

#include <cmath>

namespace tw {

std::string amountInWords(double value, const std::string& unit) {
  const bool whole = std::abs(value - std::round(value)) < 0.05 || std::abs(value) >= 20;
  std::string out = whole ? fmt::format("{:.0f}", value) : fmt::format("{:.1f}", value);
  if (unit.empty()) return out;
  const bool one = out == "1" && unit.size() > 1 && unit.ends_with('s');
  return out + " " + (one ? unit.substr(0, unit.size() - 1) : unit);
}

}  // namespace tw
