// A script as numbered lines, with the marks of Markdown taken off, and what the shape of a single
// line can tell: the head of a page, the head of a panel, the end of the script. What a line
// means in its surroundings is decided by read_script.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace tw {

struct ScriptLine {
  int number = 0;          ///< from 1
  std::size_t indent = 0;  ///< spaces in front
  std::size_t width = 0;   ///< bytes as received
  std::string text;        ///< trimmed, without Markdown marks; empty for blank lines and rules
  std::string stressed;    ///< the same with a star on each side of stressed words
};

std::vector<ScriptLine> splitLines(std::string_view text);
/// One line without heading signs, quote and list marks, emphasis and rules.
std::string withoutMarkdown(std::string_view line);
/// Words from the end of a line's text as they stand in `stressed`, with their stars; as they are
/// when stress begins before them.
std::string withStress(const ScriptLine& line, std::string_view words);

struct PageHead {
  int first = 0, last = 0;
  bool spread = false, splash = false, continued = false;
  int announcedPanels = 0;
  std::string title;  ///< what else stands on the line
};
std::optional<PageHead> pageHeadFrom(std::string_view line);

struct PanelHead {
  int first = 0, last = 0;  ///< 0 when the head has no number; last > first for "Panels 2-4"
  std::string rest;         ///< the description's beginning
};
/// A head with the word panel in it.
std::optional<PanelHead> panelHeadFrom(std::string_view line);
/// "1.", "1) …", "(1)", "#1": a panel head or a numbered line of copy.
std::optional<PanelHead> numberedHeadFrom(std::string_view line);

/// "END", "(MORE)", "CONTINUED": furniture that shows nothing.
bool isPageFurniture(std::string_view line);
/// "INT. BELL TOWER - NIGHT"
bool isSlugline(std::string_view line);

}  // namespace tw
