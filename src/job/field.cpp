#include "job/field.h"

#include <algorithm>
#include <array>
#include <charconv>
#include <chrono>
#include <cmath>

namespace tw {

namespace {

/// The digits as a number, or -1 when anything else stands among them.
int digits(std::string_view text) {
  int value = 0;
  for (const char c : text) {
    if (c < '0' || c > '9') return -1;
    value = value * 10 + (c - '0');
  }
  return value;
}

}  // namespace

bool isDate(std::string_view text) {
  if (text.size() != 10 || text[4] != '-' || text[7] != '-') return false;
  const int year = digits(text.substr(0, 4));
  const int month = digits(text.substr(5, 2));
  const int day = digits(text.substr(8, 2));
  if (year < 0 || month < 0 || day < 0) return false;
  return std::chrono::year_month_day(std::chrono::year(year),
                                     std::chrono::month(static_cast<unsigned>(month)),
                                     std::chrono::day(static_cast<unsigned>(day)))
      .ok();
}

bool isWord(std::string_view text) {
  return std::none_of(text.begin(), text.end(), [](char c) {
    return (c >= 0 && c <= ' ') || c == '/' || c == '\\' || c == '\x7f';
  });
}

bool isFileName(std::string_view text) {
  if (text == "." || text == "..") return false;
  return std::none_of(text.begin(), text.end(), [](char c) {
    return (c >= 0 && c < ' ') || c == '/' || c == '\\' || c == '\x7f';
  });
}

double rounded(double value, int decimals) {
  static constexpr std::array<double, 7> kPowers = {1, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6};
  const double power = kPowers.at(static_cast<std::size_t>(decimals));
  const double result = std::round(value * power) / power;
  return result == 0 ? 0 : result;  // no "-0" in files
}

}  // namespace tw
