#include "press/in_words.h"

#include <fmt/format.h>

#include <cmath>

namespace tw {

std::string pageInWords(const RoughPicture& picture) {
  if (!picture.sheet.spread) return fmt::format("page {}", picture.page);
  return fmt::format("pages {}–{}", picture.page, picture.page + 1);
}

std::string readingInWords(const RoughReading& reading) {
  return fmt::format("{:.0f} % of readers keep the order. Leads hand on {:.0f} %.",
                     reading.followed * 100, reading.handedOn * 100);
}

std::string costInWords(double cost) {
  if (std::abs(cost) >= 100) return fmt::format("{:.0f}", cost);
  return fmt::format("{:.2f}", std::abs(cost) < 0.005 ? 0.0 : cost);
}

}  // namespace tw
