// Letters and words of UTF-8 text: case, trimming, words compared without regard to case or to
// the shape of quotes. Everything that reads a script compares text through here.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace tw {

/// Lower case by Unicode, curly apostrophes made straight.
std::string folded(std::string_view text);
/// True when the text has at least one letter and none of its letters is lower case.
bool isAllCaps(std::string_view text);
/// True when each word starts with a capital letter or a digit, small joining words apart.
bool isTitleCase(std::string_view text);
/// True when the first letter is lower case; false when there is no letter.
bool startsLower(std::string_view text);
bool hasLetter(std::string_view text);

/// Without spaces at both ends.
std::string_view bareText(std::string_view text);
/// Without any of these ASCII marks, spaces, en dashes and em dashes at the start.
std::string_view withoutLeadingMarks(std::string_view text, std::string_view marks);
/// Parts between spaces, empty ones left out.
std::vector<std::string_view> splitWords(std::string_view text);
bool startsWithFolded(std::string_view text, std::string_view lowerPrefix);

/// "MARA VOSS" → "mara-voss": lower-case letters and digits, accents taken off, joined by '-'.
std::string idFrom(std::string_view name);

}  // namespace tw
