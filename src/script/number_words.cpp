#include "script/number_words.h"

#include <array>
#include <cctype>

#include "script/text_case.h"

namespace tw {

namespace {

constexpr std::array<std::string_view, 20> kUnits = {
    "zero",     "one",     "two",     "three",     "four",     "five",    "six",
    "seven",    "eight",   "nine",    "ten",       "eleven",   "twelve",  "thirteen",
    "fourteen", "fifteen", "sixteen", "seventeen", "eighteen", "nineteen"};
constexpr std::array<std::string_view, 8> kTens = {"twenty", "thirty",  "forty",  "fifty",
                                                   "sixty",  "seventy", "eighty", "ninety"};

bool letterAt(std::string_view text, std::size_t at) {
  if (at >= text.size()) return false;
  const auto byte = static_cast<unsigned char>(text[at]);
  return std::isalnum(byte) != 0 || (byte >= 0xC3 && byte < 0xE0);  // Latin, Greek, Cyrillic
}

bool digitAt(std::string_view text, std::size_t at) {
  return at < text.size() && text[at] >= '0' && text[at] <= '9';
}

std::optional<NumberRead> readDigits(std::string_view text) {
  NumberRead number;
  while (digitAt(text, number.length) && number.length < 5)
    number.value = number.value * 10 + (text[number.length++] - '0');
  if (number.length == 0 || number.length > 4 || letterAt(text, number.length)) return {};
  return number;
}

/// The word of the table at the start of the text, as a whole word.
template <std::size_t N>
int wholeWord(std::string_view text, const std::array<std::string_view, N>& table) {
  for (std::size_t i = 0; i < N; ++i)
    if (startsWithFolded(text, table[i]) && !letterAt(text, table[i].size()))
      return static_cast<int>(i);
  return -1;
}

}  // namespace

std::optional<NumberRead> readNumber(std::string_view text) {
  if (digitAt(text, 0)) return readDigits(text);
  if (const int unit = wholeWord(text, kUnits); unit >= 0)
    return NumberRead{unit, kUnits[static_cast<std::size_t>(unit)].size()};
  const int ten = wholeWord(text, kTens);
  if (ten < 0) return {};
  const std::size_t word = kTens[static_cast<std::size_t>(ten)].size();
  NumberRead number{(ten + 2) * 10, word};
  if (word >= text.size() || (text[word] != '-' && text[word] != ' ')) return number;
  const int unit = wholeWord(text.substr(word + 1), kUnits);
  if (unit < 1 || unit > 9) return number;
  number.value += unit;
  number.length += 1 + kUnits[static_cast<std::size_t>(unit)].size();
  if (text[word] == ' ') number.firstWord = word;
  return number;
}

}  // namespace tw
