#include "script/roster.h"

#include <algorithm>
#include <array>

#include "script/text_case.h"

namespace tw {

namespace {

/// Words that are part of a name but name nobody alone.
bool isCommonPart(const std::string& word) {
  static constexpr std::array<std::string_view, 26> kParts = {
      "the", "old",    "young", "big",     "little", "mr",    "mrs",    "ms",     "miss",
      "dr",  "doctor", "capt",  "captain", "sir",    "lady",  "of",     "and",    "de",
      "van", "von",    "first", "second",  "aunt",   "uncle", "sister", "brother"};
  return word.size() < 2 || word.front() == '#' ||
         std::ranges::find(kParts, word) != kParts.end() ||
         std::ranges::all_of(word, [](char c) { return c >= '0' && c <= '9'; });
}

constexpr std::size_t kMostCompared = 100;  // a cast; more names than this are no cast

/// At most one letter changed, added or left out.
bool isOneLetterOff(std::string_view a, std::string_view b) {
  if (a.size() > b.size()) std::swap(a, b);
  if (b.size() - a.size() > 1 || a.size() < 3) return false;
  std::size_t i = 0;
  while (i < a.size() && a[i] == b[i]) ++i;
  return a.substr(a.size() == b.size() ? i + (i < a.size()) : i) ==
         b.substr(std::min(b.size(), i + 1));
}

}  // namespace

std::size_t Roster::add(Character person) {
  const std::size_t index = people_.size();
  const auto [known, isNew] = byId_.emplace(person.id, index);
  if (!isNew) return known->second;
  addName(person.name, index, true);
  for (const std::string& alias : person.aliases)
    addName(alias, index, alias.find(' ') != std::string::npos);
  if (person.aliases.empty())
    for (const std::string_view word : splitWords(person.name)) addName(word, index, false);
  people_.push_back(std::move(person));
  return index;
}

void Roster::addName(std::string_view name, std::size_t index, bool whole) {
  std::vector<std::string> words = phraseOf(name);
  if (words.empty()) return;
  if (!whole && words.size() == 1 && isCommonPart(words.front())) return;
  longest_ = std::max(longest_, words.size());
  const auto [at, added] = names_.emplace(std::move(words), NameEntry{index, whole, false});
  if (added || at->second.person == index) return;
  if (whole && !at->second.whole)
    at->second = {index, true, false};
  else if (!whole && !at->second.whole)
    at->second.ambiguous = true;
}

std::optional<std::size_t> Roster::find(std::string_view name) const {
  const auto found = names_.find(phraseOf(name));
  if (found == names_.end() || found->second.ambiguous) return {};
  return found->second.person;
}

std::optional<std::size_t> Roster::findAt(const std::vector<Token>& tokens, std::size_t at,
                                          std::size_t& length) const {
  if (!tokens[at].isWord() || startsLower(tokens[at].text)) return {};
  std::vector<std::string> words;
  std::optional<std::size_t> best;
  for (std::size_t i = at; i < tokens.size() && tokens[i].isWord() && i < at + longest_; ++i) {
    words.push_back(tokens[i].low);
    const auto found = names_.find(words);
    if (found == names_.end() || found->second.ambiguous) continue;
    best = found->second.person;
    length = words.size();
  }
  return best;
}

std::string Roster::nearest(std::string_view name) const {
  const std::string low = folded(name);
  for (std::size_t i = 0; i < std::min(people_.size(), kMostCompared); ++i) {
    const Character& person = people_[i];
    if (isOneLetterOff(low, folded(person.name))) return person.name;
    for (const std::string& alias : person.aliases)
      if (isOneLetterOff(low, folded(alias))) return person.name;
  }
  return {};
}

}  // namespace tw
