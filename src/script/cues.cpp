#include "script/cues.h"

#include <algorithm>
#include <array>

#include "script/script_lines.h"
#include "script/text_case.h"

namespace tw {

namespace {

constexpr std::size_t kLongestCue = 80;  // bytes before the colon; longer is a sentence
constexpr std::size_t kMostNameWords = 5;

struct CueHead {
  std::string_view name;
  std::vector<std::string_view> modifiers;
};

bool isBracketOpen(char c) {
  return c == '(' || c == '[';
}
bool isBracketClose(char c) {
  return c == ')' || c == ']';
}

/// Splits "MARA (OFF) (WHISPER)" or "MARA, OFF"; nothing when text stands behind a bracket.
std::optional<CueHead> splitHead(std::string_view text) {
  CueHead head;
  std::size_t i = 0;
  while (i < text.size() && !isBracketOpen(text[i]) && text[i] != ',') ++i;
  head.name = bareText(text.substr(0, i));
  while (i < text.size()) {
    const bool bracket = isBracketOpen(text[i]);
    std::size_t end = i + 1;
    while (end < text.size() &&
           (bracket ? !isBracketClose(text[end]) : !isBracketOpen(text[end]) && text[end] != ','))
      ++end;
    if (bracket && end == text.size()) return {};
    head.modifiers.push_back(bareText(text.substr(i + 1, end - i - 1)));
    i = bracket ? end + 1 : end;
    while (i < text.size() && text[i] == ' ') ++i;
    if (i < text.size() && !isBracketOpen(text[i]) && text[i] != ',') return {};
  }
  return head;
}

/// Position of the colon that ends a cue: outside brackets, not within "10:30" or "http:".
std::size_t cueColon(std::string_view line) {
  int depth = 0;
  for (std::size_t i = 0; i < line.size() && i < kLongestCue; ++i) {
    if (isBracketOpen(line[i])) ++depth;
    if (isBracketClose(line[i])) --depth;
    if (line[i] != ':' || depth != 0) continue;
    return i + 1 < line.size() && (line[i + 1] == '/' || std::isdigit(line[i + 1]) != 0)
               ? std::string_view::npos
               : i;
  }
  return std::string_view::npos;
}

bool looksLikeName(std::string_view name, const CueWords& words) {
  if (name.empty() || name.size() > kLongestCue || !hasLetter(name)) return false;
  if (name.find_first_of("!?;\"=<>{}|") != std::string_view::npos) return false;
  if (splitWords(name).size() > kMostNameWords) return false;
  return !words.notSpeakers.contains(folded(name));
}

std::optional<CopyKind> keyword(std::string_view word, const CueWords& words) {
  std::string low = folded(word);
  const auto found = words.keywords.find(low);
  if (found == words.keywords.end()) return {};
  return found->second;
}

void addNames(std::string_view text, Cue& cue) {
  while (!text.empty()) {
    std::size_t end = text.size(), skip = 0;
    for (const std::string_view mark : {" & ", "/", " AND ", " and ", " + "})
      if (const std::size_t at = text.find(mark); at < end) end = at, skip = mark.size();
    const std::string_view name = bareText(text.substr(0, end));
    if (hasLetter(name)) cue.names.emplace_back(name);
    text = end + skip < text.size() ? text.substr(end + skip) : std::string_view();
  }
}

/// "CAPTION", "CAPTION MARA", "MARA CAPTION", "CAP 2", "MARA OFF", "MARA": kind and names.
void readName(std::string_view name, const CueWords& words, Cue& cue) {
  if (const auto kind = keyword(name, words)) {
    cue.kind = *kind;
    return;
  }
  const std::vector<std::string_view> parts = splitWords(name);
  if (parts.size() > 1) {
    if (const auto kind = keyword(parts.front(), words)) {
      cue.kind = *kind;
      return addNames(withoutLeadingMarks(name.substr(parts.front().size()), "-/:"), cue);
    }
    const std::string_view before =
        bareText(name.substr(0, static_cast<std::size_t>(parts.back().data() - name.data())));
    if (const auto kind = keyword(parts.back(), words)) {
      cue.kind = *kind;
      return addNames(before.ends_with('-') ? before.substr(0, before.size() - 1) : before, cue);
    }
    if (const auto found = words.modifiers.find(folded(parts.back()));
        found != words.modifiers.end() && found->second != Modifier::Plain &&
        !words.notNames.contains(folded(before)))
      return applyModifiers(parts.back(), words, cue), addNames(before, cue);
  }
  addNames(name, cue);
}

void apply(Modifier modifier, Cue& cue) {
  switch (modifier) {
    case Modifier::Plain:
      break;
    case Modifier::Whisper:
      cue.kind = CopyKind::Whisper;
      break;
    case Modifier::Shout:
      cue.kind = CopyKind::Shout;
      break;
    case Modifier::Thought:
      cue.kind = CopyKind::Thought;
      break;
    case Modifier::Caption:
      cue.kind = CopyKind::Caption;
      break;
    case Modifier::Off:
      cue.offPanel = true;
      break;
  }
}

void applyOneModifier(std::string_view text, const CueWords& words, Cue& cue) {
  text = withoutLeadingMarks(bareText(text), "-.");
  if (!hasLetter(text)) return;
  const std::string low = folded(text);
  auto found = words.modifiers.find(low);
  if (found == words.modifiers.end() && low.ends_with('.'))
    found = words.modifiers.find(low.substr(0, low.size() - 1));
  if (found != words.modifiers.end())
    apply(found->second, cue);
  else if (low.starts_with("to ") && splitWords(text).size() <= 4)
    cue.spokenTo = std::string(bareText(text.substr(3)));
  else
    cue.unknown.emplace_back(text);
}

bool isSpeechKind(CopyKind kind) {
  return kind != CopyKind::Caption && kind != CopyKind::Sfx;
}

/// "CAPTION (MARA)": the bracket names the voice.
void applyHead(const CueHead& head, const CueWords& words, Cue& cue) {
  readName(head.name, words, cue);
  const CopyKind kind = cue.kind;
  for (const std::string_view modifier : head.modifiers) applyModifiers(modifier, words, cue);
  if (isSpeechKind(kind)) return;
  cue.kind = kind;
  if (kind == CopyKind::Caption && cue.names.empty() && cue.unknown.size() == 1 &&
      looksLikeName(cue.unknown.front(), words)) {
    addNames(std::string(cue.unknown.front()), cue);
    cue.unknown.clear();
  }
}

}  // namespace

void applyModifiers(std::string_view text, const CueWords& words, Cue& cue) {
  if (words.modifiers.contains(folded(text))) return applyOneModifier(text, words, cue);
  while (!text.empty()) {
    const std::size_t end = std::min(text.find_first_of(",;/"), text.size());
    applyOneModifier(text.substr(0, end), words, cue);
    text = end < text.size() ? text.substr(end + 1) : std::string_view();
  }
}

std::string_view withoutItemNumber(std::string_view line) {
  std::size_t i = line.starts_with('(') || line.starts_with('#') ? 1 : 0;
  const std::size_t start = i;
  while (i < line.size() && i < start + 3 && line[i] >= '0' && line[i] <= '9') ++i;
  if (i == start) return line;
  if (i < line.size() && (line[i] == '.' || line[i] == ')' || line[i] == ':')) ++i;
  if (i >= line.size() || line[i] != ' ') return line;
  return withoutLeadingMarks(line.substr(i), "-.");
}

std::optional<Cue> colonCueFrom(std::string_view line, const CueWords& words,
                                const IsKnownName& isKnown) {
  line = withoutItemNumber(line);
  const std::size_t colon = cueColon(line);
  if (colon == std::string_view::npos || isSlugline(line.substr(0, colon))) return {};
  const std::optional<CueHead> head = splitHead(line.substr(0, colon));
  if (!head || !looksLikeName(head->name, words)) return {};
  Cue cue;
  applyHead(*head, words, cue);
  const bool plainSpeaker = cue.names.size() > 0 && cue.kind != CopyKind::Caption;
  if (plainSpeaker && !isAllCaps(head->name) && !isKnown(head->name)) return {};
  cue.words = std::string(bareText(line.substr(colon + 1)));
  return cue;
}

std::optional<Cue> bareCueFrom(std::string_view line, const CueWords& words,
                               const IsKnownName& isKnown) {
  line = withoutItemNumber(line);
  if (isSlugline(line)) return {};
  const std::optional<CueHead> head = splitHead(line);
  if (!head || !looksLikeName(head->name, words) || !isAllCaps(head->name)) return {};
  if (std::string_view(".,-").find(head->name.back()) != std::string_view::npos) return {};
  Cue cue;
  applyHead(*head, words, cue);
  const bool modified = !head->modifiers.empty() && cue.unknown.empty();
  if (cue.names.empty() || modified || isKnown(head->name)) return cue;
  const std::vector<std::string_view> parts = splitWords(head->name);
  const bool anyPlain = std::ranges::any_of(
      parts, [&](std::string_view part) { return words.notNames.contains(folded(part)); });
  if (anyPlain || parts.size() > 2 || !head->modifiers.empty()) return {};
  return cue;
}

std::optional<std::string_view> bracketedLine(std::string_view line) {
  if (line.size() < 3 || !isBracketOpen(line.front()) || !isBracketClose(line.back())) return {};
  const std::string_view inside = line.substr(1, line.size() - 2);
  if (inside.find_first_of("()[]") != std::string_view::npos) return {};
  return bareText(inside);
}

std::optional<std::string> titleCaseCueName(std::string_view line, const CueWords& words) {
  line = withoutItemNumber(line);
  const std::size_t colon = cueColon(line);
  if (colon == std::string_view::npos || colon > 30) return {};
  const std::optional<CueHead> head = splitHead(line.substr(0, colon));
  if (!head || !looksLikeName(head->name, words) || splitWords(head->name).size() > 2) return {};
  if (!isTitleCase(head->name) || keyword(head->name, words)) return {};
  return folded(head->name);
}

}  // namespace tw
