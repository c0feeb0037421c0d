// A panel's strength as a reveal is the sum of what speaks for it:
//
//    1     the script marks it: "suddenly", "reveal", "turns to see", …
//    1     it stands alone on its page, or leads a spread
//    1     it is the page's dominant picture, because the artist or the editor says so
//    0.6   somebody enters who was not seen before in the story (not on page 1)
//    0.5   it is much the largest of its page, 1.5 times the next
//
// and from 1 on the panel is taken for one. Weights: ours. Whether it sits well is then only the
// parity of its page. Cost: linear. Does badly: a quiet surprise in a small panel of a script that
// does not say so is missed; a large panel that is large for its crowd may be taken for a surprise,
// which is why these findings are for a look.
#include "read/page_turns.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cctype>

namespace tw {

namespace {

constexpr double kOfWords = 1, kAlone = 1, kDominant = 1, kEntrance = 0.6, kLargest = 0.5;
constexpr double kMuchLarger = 1.5;
constexpr double kIsReveal = 1;

constexpr std::array<std::string_view, 13> kRevealWords{
    "reveal",      "reveals",  "revealed",   "revealing",    "suddenly",
    "all at once", "surprise", "shock",      "turns to see", "we see for the first time",
    "bursts",      "appears",  "there it is"};

/// Stands in the text as words of its own.
bool standsIn(const std::string& text, std::string_view word) {
  for (std::size_t at = text.find(word); at != text.npos; at = text.find(word, at + 1)) {
    const std::size_t end = at + word.size();
    const bool begins = at == 0 || !std::isalpha(static_cast<unsigned char>(text[at - 1]));
    const bool ends = end == text.size() || !std::isalpha(static_cast<unsigned char>(text[end]));
    if (begins && ends) return true;
  }
  return false;
}

/// Its area over the next largest one's; 0 when it is not the largest.
double largerBy(const StoryPage& page, std::size_t panel) {
  double next = 0;
  for (std::size_t i = 0; i < page.panels.size(); ++i)
    if (i != panel) next = std::max(next, page.panels[i].areaShare);
  const double own = page.panels[panel].areaShare;
  return next > 0 && own > next ? own / next : 0;
}

class Signs {
 public:
  void add(bool is, double strength, const std::string& why) {
    if (!is) return;
    strength_ += strength;
    why_ += (why_.empty() ? "" : ", ") + why;
  }
  double strength() const { return strength_; }
  const std::string& why() const { return why_; }

 private:
  double strength_ = 0;
  std::string why_;
};

Reveal revealAt(const StoryPage& page, StoryPlace at) {
  const StoryPanel& panel = page.panels[at.panel];
  const bool isAlone = page.panels.size() == 1 || (page.spread && at.panel == 0 && panel.dominant);
  Signs signs;
  signs.add(!panel.revealWord.empty(), kOfWords,
            fmt::format("the script says \"{}\"", panel.revealWord));
  signs.add(isAlone, kAlone, page.spread ? "it leads the spread" : "it has the page to itself");
  signs.add(panel.dominant && !isAlone, kDominant, "it is the page's dominant picture");
  signs.add(!panel.enters.empty() && page.number > 1, kEntrance,
            fmt::format("first sight of {}", fmt::join(panel.enters, " and ")));
  signs.add(page.measured && largerBy(page, at.panel) >= kMuchLarger, kLargest,
            "it is much the largest");
  return {at, signs.strength(), signs.why(), !panel.revealWord.empty(), pagePlaceOf(page)};
}

}  // namespace

PagePlace pagePlaceOf(const StoryPage& page) {
  if (page.number == 1) return PagePlace::Opens;
  return page.number % 2 == 0 ? PagePlace::AfterTurn : PagePlace::InView;
}

std::string_view nameOf(PagePlace place) {
  switch (place) {
    case PagePlace::Opens:
      return "opens";
    case PagePlace::AfterTurn:
      return "after a turn";
    case PagePlace::InView:
      break;
  }
  return "in view";
}

std::vector<Reveal> revealsOf(const SeenStory& story) {
  std::vector<Reveal> out;
  for (std::size_t p = 0; p < story.pages.size(); ++p) {
    Reveal best;
    for (std::size_t i = 0; i < story.pages[p].panels.size(); ++i) {
      Reveal reveal = revealAt(story.pages[p], {p, i});
      if (reveal.strength > best.strength) best = std::move(reveal);
    }
    if (best.strength >= kIsReveal) out.push_back(std::move(best));
  }
  return out;
}

int revealsInView(const std::vector<Reveal>& reveals) {
  return static_cast<int>(std::ranges::count(reveals, PagePlace::InView, &Reveal::place));
}

SeenStory withPagesMoved(SeenStory story, std::size_t from, int by) {
  for (std::size_t p = from; p < story.pages.size(); ++p) story.pages[p].number += by;
  return story;
}

int brokenSpreads(const SeenStory& story) {
  return static_cast<int>(std::ranges::count_if(
      story.pages, [](const StoryPage& page) { return page.spread && !startsOnEven(page); }));
}

std::string revealWordIn(std::string_view description) {
  std::string text(description);
  for (char& c : text) c = static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
  for (const std::string_view word : kRevealWords)
    if (standsIn(text, word)) return std::string(word);
  return {};
}

}  // namespace tw
