// The part before page one: the title, and the list of the cast with what its notes say of each.
// What is neither comes back as a warning, word for word.
#pragma once

#include <string>
#include <vector>

#include "base/result.h"
#include "job/beat.h"
#include "script/dated_looks.h"
#include "script/lexicon.h"
#include "script/script_lines.h"

namespace tw {

struct FrontMatter {
  std::string title;
  bool hasCast = false;
  std::vector<Character> cast;
  std::vector<DatedLook> dated;  ///< parts of their notes that hold for some pages only
  Problems warnings;             ///< text that is neither title nor cast
};

/// Reads the lines before the first page.
FrontMatter readFrontMatter(const std::vector<ScriptLine>& lines, std::size_t count,
                            const Lexicon& lexicon, const std::string& fileName);

/// Fills sex, height and build from words such as "woman, 1.72 m, heavy"; defaults otherwise.
void readPersonNote(std::string_view note, const Lexicon& lexicon, Character& person);

}  // namespace tw
