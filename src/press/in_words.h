// How this folder says the same few things everywhere: costs, pages, reading.
#pragma once

#include <string>

#include "press/proof.h"

namespace tw {

/// "page 3", or "pages 4–5" for a spread.
std::string pageInWords(const RoughPicture& picture);
/// "92 % of readers keep the order. Leads hand on 71 %."
std::string readingInWords(const RoughReading& reading);
/// "2.48", "0.07"; never more digits than mean something.
std::string costInWords(double cost);

}  // namespace tw
