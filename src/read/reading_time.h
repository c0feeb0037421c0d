// How long words take in silent reading, and a panel looked at by itself. Silent reading of
// English: 238 words a minute in non-fiction, 260 in fiction, the difference being the length of
// the words (Brysbaert 2019, J. Mem. Lang. 109:104047, doi:10.1016/j.jml.2019.104047; from memory,
// high; the mean word lengths of 4.6 and 4.2 letters from memory, medium). Both say 55 ms a letter.
#pragma once

#include "read/seen_page.h"

namespace tw {

namespace reading_time {

inline constexpr double kWordsPerMinute = 260;  ///< fiction
inline constexpr double kLettersPerWord = 4.2;  ///< … of fiction
inline constexpr double kSecondsPerLetter = 60 / kWordsPerMinute / kLettersPerWord;
/// A wordless panel, each shown alone and turned by the reader (Cohn, author's words): the slow
/// end, for on a page many pictures get a single glance.
inline constexpr double kWordlessPanel = 1.5;

}  // namespace reading_time

/// Letters to read; words whose letters are not known count as of mean length.
double lettersToRead(int words, int characters);

/// Seconds for copy of so many words and characters without spaces.
double copySeconds(int words, int characters);

/// Seconds for a panel that is looked at alone: a + b·letters (Ikuta et al. 2023 found viewing time
/// proportional to text, with a slope of its own for each reader).
double panelSeconds(const SeenPanel& panel);
double pageSeconds(const SeenPage& page);

}  // namespace tw
