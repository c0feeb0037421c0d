#include <algorithm>

#include "job/emphasis.h"
#include "script/script_lines.h"
#include "script/text_case.h"

namespace tw {

namespace {

bool isRule(std::string_view line) {
  if (line.size() < 3) return false;
  const char mark = line.front();
  if (std::string_view("-*_=~#`").find(mark) == std::string_view::npos) return false;
  return std::ranges::all_of(line, [&](char c) { return c == mark || c == ' '; });
}

/// "- ", "* ", "+ ", "• " and "> " at the start, several deep; "--" and "-word" stay.
std::string_view withoutBlockMarks(std::string_view line) {
  for (bool found = true; found;) {
    line = bareText(line);
    found = false;
    if (line.size() > 1 && line[1] == ' ' &&
        std::string_view("-*+>").find(line[0]) != std::string_view::npos)
      found = true, line.remove_prefix(2);
    else if (line.starts_with(">") && !line.starts_with(">>"))
      found = true, line.remove_prefix(1);
    else if (line.starts_with("\u2022"))
      found = true, line.remove_prefix(std::string_view("\u2022").size());
  }
  return line;
}

/// "## Page 7" and "## Page 7 ##"; "#1" and "###" stay.
std::string_view withoutHeadingSigns(std::string_view line) {
  std::size_t signs = 0;
  while (signs < line.size() && line[signs] == '#') ++signs;
  if (signs == 0 || signs > 6 || signs == line.size() || line[signs] != ' ') return line;
  line = bareText(line.substr(signs));
  while (line.ends_with('#')) line.remove_suffix(1);
  return bareText(line);
}

bool isWordByte(std::string_view line, std::size_t at) {
  if (at >= line.size()) return false;
  const auto c = static_cast<unsigned char>(line[at]);
  return std::isalnum(c) != 0 || c >= 0x80;
}

/// A run of emphasis marks opens or closes when exactly one of its sides touches a word or a
/// sign that is not a space; "2 * 3" and snake_case keep theirs.
bool isEmphasis(std::string_view line, std::size_t begin, std::size_t end) {
  const bool spaceBefore = begin == 0 || line[begin - 1] == ' ';
  const bool spaceAfter = end >= line.size() || line[end] == ' ';
  if (spaceBefore && spaceAfter) return false;
  return line[begin] == '*' || !isWordByte(line, begin - 1) || !isWordByte(line, end);
}

std::string withoutEmphasis(std::string_view line) {
  std::string out;
  out.reserve(line.size());
  for (std::size_t i = 0; i < line.size();) {
    const char c = line[i];
    if (c == '\\' && i + 1 < line.size() && std::ispunct(static_cast<unsigned char>(line[i + 1]))) {
      out += line[i + 1];
      i += 2;
    } else if (c == '*' || c == '_' || c == '`') {
      std::size_t end = i;
      while (end < line.size() && line[end] == c) ++end;
      if (!isEmphasis(line, i, end)) out.append(line.substr(i, end - i));
      i = end;
    } else {
      out += c;
      ++i;
    }
  }
  return out;
}

}  // namespace

namespace {

std::string_view withoutLineMarks(std::string_view line) {
  line = bareText(line);
  return isRule(line) ? std::string_view() : withoutHeadingSigns(withoutBlockMarks(line));
}

std::string withStarsOnly(std::string_view line) {
  line = withoutLineMarks(line);
  std::vector<EmphasisRun> runs = emphasisRuns(line);
  for (EmphasisRun& run : runs) run.text = withoutEmphasis(run.text);
  return withStars(runs);
}

}  // namespace

std::string withoutMarkdown(std::string_view line) {
  line = withoutLineMarks(line);
  if (line.find_first_of("*_`\\") == std::string_view::npos) return std::string(line);
  return std::string(bareText(withoutEmphasis(line)));
}

std::string withStress(const ScriptLine& line, std::string_view words) {
  const std::string& from = line.stressed;
  std::size_t at = from.size();
  int stars = 0;
  for (std::size_t i = words.size(); i > 0;) {
    if (at == 0) return std::string(words);
    --at;
    if (from[at] == words[i - 1])
      --i;
    else if (from[at] == '*')
      ++stars;
    else
      return std::string(words);
  }
  if (at > 0 && from[at - 1] == '*' && stars % 2 == 1) --at, ++stars;
  return stars % 2 == 0 ? from.substr(at) : std::string(words);
}

std::vector<ScriptLine> splitLines(std::string_view text) {
  std::vector<ScriptLine> lines;
  for (std::size_t start = 0; start <= text.size();) {
    const std::size_t end = std::min(text.find('\n', start), text.size());
    const std::string_view line = text.substr(start, end - start);
    const std::size_t indent = std::min(line.find_first_not_of(' '), line.size());
    lines.push_back({static_cast<int>(lines.size()) + 1, indent, line.size(), withoutMarkdown(line),
                     withStarsOnly(line)});
    start = end + 1;
  }
  return lines;
}

}  // namespace tw
