// Bytes as they were received to clean UTF-8: byte-order marks, UTF-16, Windows-1252 (Latin-1 is
// its subset for all printable signs), line ends, tabs and no-break spaces. Refuses what is no
// text at all and says what to do instead.
#pragma once

#include <string>
#include <string_view>

#include "base/result.h"

namespace tw {

struct DecodedText {
  std::string text;                 ///< UTF-8; lines end in '\n'; no control characters but that
  bool takenAsWindows1252 = false;  ///< the bytes were not valid UTF-8
};

Result<DecodedText> decodeText(std::string_view bytes, const std::string& fileName);

}  // namespace tw
