#include "script/script_lines.h"

#include <algorithm>
#include <array>

#include "script/number_words.h"
#include "script/text_case.h"

namespace tw {

namespace {

/// Takes the word off the start of `text` when it stands there as a whole word.
bool takeWord(std::string_view& text, std::string_view lower) {
  if (!startsWithFolded(text, lower)) return false;
  const std::string_view after = text.substr(lower.size());
  if (!after.empty() && std::isalpha(static_cast<unsigned char>(after.front())) != 0) return false;
  text = bareText(after);
  return true;
}

template <std::size_t N>
bool takeAnyWord(std::string_view& text, const std::array<std::string_view, N>& words) {
  return std::ranges::any_of(words, [&](std::string_view word) { return takeWord(text, word); });
}

bool panelsFollow(std::string_view text) {
  text = withoutLeadingMarks(text, "-");
  return takeWord(text, "panels") || takeWord(text, "panel");
}

/// The mark between two page or panel numbers; empty when there is none.
bool takeRangeMark(std::string_view& text) {
  static constexpr std::array<std::string_view, 4> kWords = {"and", "to", "through", "thru"};
  if (takeAnyWord(text, kWords)) return true;
  static constexpr std::array<std::string_view, 7> kMarks = {"--", "-", "\u2013", "\u2014",
                                                             "&",  "/", "+"};
  for (const std::string_view mark : kMarks)
    if (text.starts_with(mark)) {
      text = bareText(text.substr(mark.size()));
      return true;
    }
  return false;
}

struct NumberRange {
  int first = 0, last = 0;
};

/// "4", "4-5", "FOUR AND FIVE"; a number that counts panels ("3 - 5 panels") is left in the text.
std::optional<NumberRange> takeNumbers(std::string_view& text) {
  if (text.starts_with('#')) text.remove_prefix(1);
  std::optional<NumberRead> first = readNumber(text);
  if (!first) return {};
  if (first->firstWord > 0 && panelsFollow(text.substr(first->length))) {
    first->length = first->firstWord;  // PAGE TWENTY FIVE PANELS: page 20 with five panels
    first->value -= first->value % 10;
  }
  text = bareText(text.substr(first->length));
  std::string_view ahead = text;
  if (takeRangeMark(ahead))
    if (const auto second = readNumber(ahead);
        second && !panelsFollow(ahead.substr(second->length))) {
      text = bareText(ahead.substr(second->length));
      return NumberRange{first->value, second->value};
    }
  return NumberRange{first->value, first->value};
}

constexpr std::array<std::string_view, 9> kSpreadWords = {
    "spread",   "dps",        "double",     "double-page",  "doublepage",
    "two-page", "centrefold", "centerfold", "double-spread"};
constexpr std::array<std::string_view, 4> kContinuedWords = {"continued", "cont'd", "contd",
                                                             "cont"};
constexpr std::array<std::string_view, 12> kKnownTailWords = {
    "page", "pages", "of", "grid", "a", "an", "the", "in", "with", "and", "full-page", "story"};

/// The words of a head's tail, lower case, without brackets and end marks.
std::vector<std::string> tailWords(std::string_view tail) {
  std::string text = folded(tail);
  for (char& c : text)
    if (std::string_view("()[]{}:;,.|*").find(c) != std::string_view::npos) c = ' ';
  std::vector<std::string> words;
  for (const std::string_view word : splitWords(text)) words.emplace_back(word);
  return words;
}

bool isPanelWord(std::string_view word) {
  return word == "panel" || word == "panels" || word == "pnls" || word == "pnl";
}

/// Reads the tail of a page head; returns false when some of its words have no known meaning.
bool readTail(std::string_view tail, PageHead& head) {
  const std::vector<std::string> words = tailWords(tail);
  bool allKnown = true;
  for (std::size_t i = 0; i < words.size(); ++i) {
    const std::string& word = words[i];
    const std::optional<NumberRead> number = readNumber(word);
    if (number && number->length == word.size()) {
      if (i + 1 < words.size() && isPanelWord(words[i + 1])) head.announcedPanels = number->value;
    } else if (number && isPanelWord(std::string_view(word).substr(number->length + 1))) {
      head.announcedPanels = number->value;  // five-panel grid
    } else if (std::ranges::find(kSpreadWords, word) != kSpreadWords.end()) {
      head.spread = true;
    } else if (word == "splash" || word == "full-page") {
      head.splash = true;
    } else if (std::ranges::find(kContinuedWords, word) != kContinuedWords.end()) {
      head.continued = true;
    } else if (!isPanelWord(word) && hasLetter(word)) {
      allKnown &= std::ranges::find(kKnownTailWords, word) != kKnownTailWords.end();
    }
  }
  return allKnown;
}

bool tailMayFollowHead(std::string_view tail, bool allKnown) {
  if (tail.empty() || allKnown) return true;
  return std::string_view("([{-:|").find(tail.front()) != std::string_view::npos ||
         tail.starts_with("\u2013") || tail.starts_with("\u2014");
}

std::string titleFrom(std::string_view tail) {
  tail = bareText(withoutLeadingMarks(tail, "-:|."));
  if (tail.starts_with('(') && tail.find(')') == tail.size() - 1)
    tail = tail.substr(1, tail.size() - 2);
  return std::string(tail);
}

}  // namespace

std::optional<PageHead> pageHeadFrom(std::string_view line) {
  if (line.size() > 200) return {};
  PageHead head;
  static constexpr std::array<std::string_view, 5> kLeading = {"double-page", "two-page", "double",
                                                               "spread", "splash"};
  for (std::string_view before = line; takeAnyWord(line, kLeading); before = line) {
    (before.starts_with("spl") || before.starts_with("SPL") || before.starts_with("Spl")
         ? head.splash
         : head.spread) = true;
    line = withoutLeadingMarks(line, ":-");
  }
  static constexpr std::array<std::string_view, 6> kPage = {"pages", "page", "pgs.",
                                                            "pg.",   "pgs",  "pg"};
  if (!takeAnyWord(line, kPage)) return {};
  const std::optional<NumberRange> numbers = takeNumbers(line);
  if (!numbers) return {};
  head.first = numbers->first;
  head.last = numbers->last;
  const bool allKnown = readTail(line, head);
  if (!tailMayFollowHead(line, allKnown)) return {};
  if (!allKnown) head.title = titleFrom(line);
  if (head.last != head.first) head.spread = true;
  if (head.spread && head.last == head.first) head.last = head.first + 1;
  return head;
}

std::optional<PanelHead> panelHeadFrom(std::string_view line) {
  static constexpr std::array<std::string_view, 7> kLeading = {"inset", "splash", "small", "large",
                                                               "big",   "wide",   "final"};
  static constexpr std::array<std::string_view, 5> kPanel = {"panels", "panel", "pnl.", "pnl",
                                                             "pan."};
  std::string_view ahead = line;
  std::string leading;
  if (takeAnyWord(ahead, kLeading))
    leading = std::string(line.substr(0, line.size() - ahead.size()));
  if (!takeAnyWord(ahead, kPanel)) return {};
  PanelHead head;
  if (const std::optional<NumberRange> numbers = takeNumbers(ahead)) {
    head = {numbers->first, numbers->last, {}};
  } else if (!ahead.empty() && !ahead.starts_with(':')) {
    return {};  // "Panel beaters hammer the hull"
  }
  head.rest = leading + std::string(bareText(withoutLeadingMarks(ahead, ".:-)")));
  return head;
}

std::optional<PanelHead> numberedHeadFrom(std::string_view line) {
  const bool bracket = line.starts_with('('), hash = line.starts_with('#');
  if (bracket || hash) line.remove_prefix(1);
  if (line.empty() || line[0] < '0' || line[0] > '9') return {};
  const std::optional<NumberRead> number = readNumber(line);
  if (!number || number->value == 0) return {};
  std::string_view after = line.substr(number->length);
  const bool marked = after.starts_with('.') || after.starts_with(')');
  if (marked) after.remove_prefix(1);
  if (!after.empty() && after.front() != ' ') return {};
  if (!marked && !hash && !bareText(after).empty()) return {};
  return PanelHead{number->value, number->value, std::string(bareText(after))};
}

bool isPageFurniture(std::string_view line) {
  static constexpr std::array<std::string_view, 12> kFurniture = {
      "end",       "fin",    "end of script", "end of issue", "end of story", "more",
      "continued", "cont'd", "cont",          "end page",     "end of page",  "page break"};
  std::string text = folded(line);
  std::erase_if(text,
                [](char c) { return std::string_view("()[].*-").find(c) != std::string::npos; });
  return std::ranges::find(kFurniture, bareText(text)) != kFurniture.end();
}

bool isSlugline(std::string_view line) {
  if (line.size() > 120) return false;
  for (const std::string_view start :
       {"int.", "ext.", "int/ext", "int ", "ext ", "i/e ", "i/e.", "interior ", "exterior ",
        "interior.", "exterior.", "int:", "ext:", "interior:", "exterior:"})
    if (startsWithFolded(line, start)) return isAllCaps(line) || start.find('.') != start.npos;
  return false;
}

}  // namespace tw
