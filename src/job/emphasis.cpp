#include "job/emphasis.h"

#include <cctype>
#include <optional>

namespace tw {

namespace {

constexpr std::size_t kMostMarks = 3;  ///< "***both***"

bool isLetter(char c) {  // of ASCII; a quote beyond it cannot be told from a letter here
  return std::isalnum(static_cast<unsigned char>(c)) != 0;
}

bool isBlank(std::string_view text, std::size_t at) {
  return at >= text.size() || std::isspace(static_cast<unsigned char>(text[at])) != 0;
}

/// How many marks stand there, all the same.
std::size_t marksAt(std::string_view text, std::size_t at) {
  if (text[at] != '*' && text[at] != '_') return 0;
  const std::size_t end = text.find_first_not_of(text[at], at);
  return (end == std::string_view::npos ? text.size() : end) - at;
}

/// Where the marks that close those at `open` stand.
std::optional<std::size_t> closing(std::string_view text, std::size_t open, std::size_t marks) {
  if (marks > kMostMarks || isBlank(text, open + marks)) return {};
  if (open > 0 && isLetter(text[open - 1])) return {};
  for (std::size_t i = open + marks; i < text.size() && text[i] != '\n';) {
    const std::size_t here = marksAt(text, i);
    const std::size_t behind = i + here;
    const bool closes = here == marks && text[i] == text[open] && !isBlank(text, i - 1) &&
                        (behind == text.size() || !isLetter(text[behind]));
    if (closes) return i;
    i += here > 0 ? here : 1;
  }
  return {};
}

}  // namespace

std::vector<EmphasisRun> emphasisRuns(std::string_view text) {
  std::vector<EmphasisRun> runs;
  const auto add = [&](std::string_view part, bool strong) {
    if (!part.empty()) runs.push_back({std::string(part), strong});
  };
  std::size_t plain = 0;
  for (std::size_t i = 0; i < text.size();) {
    const std::size_t marks = marksAt(text, i);
    const auto end = marks > 0 ? closing(text, i, marks) : std::nullopt;
    if (!end) {
      i += marks > 0 ? marks : 1;
      continue;
    }
    add(text.substr(plain, i - plain), false);
    add(text.substr(i + marks, *end - i - marks), true);
    i = plain = *end + marks;
  }
  add(text.substr(plain), false);
  return runs;
}

std::string withStars(const std::vector<EmphasisRun>& runs) {
  std::string out;
  for (const EmphasisRun& run : runs) out += run.strong ? "*" + run.text + "*" : run.text;
  return out;
}

std::string withoutStress(std::string_view text) {
  std::string out;
  for (const EmphasisRun& run : emphasisRuns(text)) out += run.text;
  return out;
}

}  // namespace tw
