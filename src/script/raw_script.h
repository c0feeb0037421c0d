// A script taken apart into pages, panels and copy, before anything is understood of what the
// panels show. Every word of the script stands somewhere in it, or in a warning.
#pragma once

#include <string>
#include <vector>

#include "base/result.h"
#include "job/beat.h"
#include "script/cues.h"
#include "script/dated_looks.h"
#include "script/script_lines.h"

namespace tw {

struct RawCopy {
  Cue cue;
  std::string text;  ///< one paragraph per line
  int line = 0;
};

struct RawPanel {
  int number = 0;  ///< as written, 0 when it had none
  int line = 0;
  bool implied = false;     ///< the page's text without a panel head
  std::string description;  ///< one paragraph per line
  std::vector<RawCopy> copy;
};

struct RawPage {
  PageHead head;
  int line = 0;
  std::string slug;  ///< "INT. BELL TOWER - NIGHT" before the first panel
  std::string note;  ///< other text before the first panel
  int noteLine = 0;
  std::vector<RawPanel> panels;
};

struct RawScript {
  std::string title;
  bool hasCast = false;
  std::vector<Character> cast;  ///< as declared
  std::vector<DatedLook> dated;
  std::vector<RawPage> pages;
  Problems warnings;
};

/// Pages, panels and copy of the lines; text outside them becomes warnings.
RawScript takeApart(const std::vector<ScriptLine>& lines, const Lexicon& lexicon,
                    const std::string& fileName);

/// What does not add up in the numbers: pages or panels missing or twice, counts that differ from
/// those announced, empty panels. Gives each panel its number on the page.
void checkNumbers(RawScript& script, const std::string& fileName);

}  // namespace tw
