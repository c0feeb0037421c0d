// Numbers as scripts write them: "4", "FOUR", "twenty-one", "TWENTY ONE". Whether the last of two
// spaced words belongs to the number is for the caller, who sees what follows.
#pragma once

#include <optional>
#include <string_view>

namespace tw {

struct NumberRead {
  int value = 0;
  std::size_t length = 0;     ///< bytes taken from the start of the text
  std::size_t firstWord = 0;  ///< bytes of the tens word of a number in two spaced words, or 0
};

/// The number at the very start of the text: up to four digits, or words from one to ninety-nine
/// in any case. A letter right behind it means that there is no number ("3rd", "oneself").
std::optional<NumberRead> readNumber(std::string_view text);

}  // namespace tw
