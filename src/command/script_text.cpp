// Which words of the script became what.
//
// 1. Every beat knows the line of its panel's head; its text runs to the next beat's head, the next
//    page's head or the end.
// 2. Copy was trimmed, freed of its cue and joined over lines when it was read, so it is sought by
//    its letters alone: a line belongs to an item when the line's letters end with the beginning of
//    what is left of the item, or are all of them the beginning.
// 3. Items are sought in order, each below the one before.
// Badly done: an item whose letters stand in the line of its own cue and in the description above
// it would be found too early; no script we know does that.
#include "command/script_text.h"

#include <algorithm>

#include "base/files.h"
#include "script/decode_text.h"
#include "script/script.h"
#include "script/script_lines.h"

namespace tw {

namespace {

/// Small letters and digits; typographic signs (U+2000 to U+203F) left out.
std::string lettersOf(std::string_view text) {
  std::string out;
  for (std::size_t i = 0; i < text.size(); ++i) {
    const auto c = static_cast<unsigned char>(text[i]);
    if (c == 0xE2 && i + 2 < text.size() && static_cast<unsigned char>(text[i + 1]) == 0x80) {
      i += 2;
    } else if (c >= 0x80 || (c >= '0' && c <= '9') || (c >= 'a' && c <= 'z')) {
      out += static_cast<char>(c);
    } else if (c >= 'A' && c <= 'Z') {
      out += static_cast<char>(c - 'A' + 'a');
    }
  }
  return out;
}

/// How many letters of `rest`, from its beginning on, the line ends with or, when a line is all
/// within, holds. 0: none of them.
std::size_t lettersHeld(const std::string& line, const std::string& rest) {
  constexpr std::size_t kTold = 4;  // fewer letters than this may be chance
  const std::size_t most = std::min(line.size(), rest.size());
  for (std::size_t n = most; n > 0; --n)
    if ((n == rest.size() || n >= kTold || n == line.size()) &&
        line.compare(line.size() - n, n, rest, 0, n) == 0)
      return n;
  return 0;
}

std::vector<std::string_view> linesIn(std::string_view text) {
  std::vector<std::string_view> out;
  for (std::size_t from = 0; from <= text.size();) {
    const std::size_t end = std::min(text.find('\n', from), text.size());
    out.push_back(text.substr(from, end - from));
    from = end + 1;
  }
  if (!out.empty() && out.back().empty()) out.pop_back();
  return out;
}

/// Gives the lines from `from` to before `until` the ids of the items that stand in them.
void findItems(std::vector<ScriptTextLine>& lines, std::size_t from, std::size_t until,
               const std::vector<CopyItem>& items) {
  for (const CopyItem& item : items) {
    const std::string whole = lettersOf(item.text);
    if (whole.empty()) continue;
    for (std::size_t first = from; first < until; ++first) {
      std::string rest = whole;
      std::size_t at = first;
      for (; at < until && !rest.empty(); ++at) {
        const std::string letters = lettersOf(lines[at].text);
        if (letters.empty()) continue;
        const std::size_t held = lettersHeld(letters, rest);
        if (held == 0 || (at > first && held != letters.size())) break;
        rest.erase(0, held);
      }
      if (!rest.empty()) continue;
      for (std::size_t i = first; i < at; ++i)
        if (!lettersOf(lines[i].text).empty()) lines[i].item = item.id;
      from = at;
      break;
    }
  }
}

}  // namespace

std::optional<std::size_t> ScriptText::lineOfBeat(std::string_view beat) const {
  const auto found = std::ranges::find(lines, beat, &ScriptTextLine::beat);
  if (beat.empty() || found == lines.end()) return std::nullopt;
  return static_cast<std::size_t>(found - lines.begin());
}

std::optional<std::size_t> ScriptText::lineOfItem(std::string_view item) const {
  const auto found = std::ranges::find(lines, item, &ScriptTextLine::item);
  if (item.empty() || found == lines.end()) return std::nullopt;
  return static_cast<std::size_t>(found - lines.begin());
}

ScriptText linkedText(std::string_view text, const std::vector<Page>& pages) {
  ScriptText out;
  for (const std::string_view line : linesIn(text)) {
    const int number = static_cast<int>(out.lines.size()) + 1;
    const bool head = pageHeadFrom(withoutMarkdown(line)).has_value();
    out.lines.push_back({number, std::string(line), head, {}, {}});
  }
  std::vector<const Beat*> beats;
  for (const Page& page : pages)
    for (const Beat& beat : page.beats)
      if (beat.line > 0 && beat.line <= static_cast<int>(out.lines.size())) beats.push_back(&beat);
  std::ranges::stable_sort(beats, {}, &Beat::line);
  for (std::size_t b = 0; b < beats.size(); ++b) {
    const std::size_t from = static_cast<std::size_t>(beats[b]->line) - 1;
    std::size_t until = from;
    const std::size_t next =
        b + 1 < beats.size() ? static_cast<std::size_t>(beats[b + 1]->line) - 1 : out.lines.size();
    while (until < next && (until == from || !out.lines[until].pageHead))
      out.lines[until++].beat = beats[b]->id;
    findItems(out.lines, from, until, beats[b]->copy);
  }
  return out;
}

Result<ScriptText> scriptTextOf(const std::filesystem::path& folder, const Job& job) {
  if (job.scriptFile.empty()) return ScriptText{};
  const auto bytes = readFile(folder / "script" / job.scriptFile);
  if (!bytes) return tl::unexpected(bytes.error());
  const bool docx = std::filesystem::path(job.scriptFile).extension() == ".docx";
  std::string text;
  if (docx) {
    auto paragraphs = textOfDocx(*bytes, job.scriptFile);
    if (!paragraphs) return tl::unexpected(paragraphs.error());
    text = std::move(*paragraphs);
  } else {
    auto decoded = decodeText(*bytes, job.scriptFile);
    if (!decoded) return tl::unexpected(decoded.error());
    text = std::move(decoded->text);
  }
  ScriptText out = linkedText(text, job.pages);
  out.file = job.scriptFile;
  return out;
}

}  // namespace tw
