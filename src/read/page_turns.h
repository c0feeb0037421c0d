// What a reader sees on turning and what before: reveals, where they stand in the book, and what
// would put them behind a turn. Common practice, no source: a surprise belongs on a page that the
// reader has to turn to (an even page, whichever way the book is read), for the page that faces it
// is in view as soon as the spread is open. Which panels are reveals is ours; see the .cpp.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "read/seen_story.h"

namespace tw {

enum class PagePlace {
  Opens,      ///< page 1, alone: seen on opening the book
  AfterTurn,  ///< even page or a spread that begins on one
  InView      ///< odd page, facing the one before it
};
PagePlace pagePlaceOf(const StoryPage& page);
std::string_view nameOf(PagePlace place);  ///< "opens", "after a turn", "in view"

/// Two facing pages can only begin on an even page.
inline bool startsOnEven(const StoryPage& page) {
  return page.number % 2 == 0;
}

struct Reveal {
  StoryPlace at;
  double strength = 0;   ///< from 1 on it is a reveal
  std::string why;       ///< "the script says \"suddenly\", it is the page's dominant picture"
  bool inWords = false;  ///< the script says so
  PagePlace place = PagePlace::AfterTurn;
};

/// At most one for each page: the strongest, the first of several.
std::vector<Reveal> revealsOf(const SeenStory& story);
/// Of these, how many are in view before their turn.
int revealsInView(const std::vector<Reveal>& reveals);

/// The story with one page more in front of that one, or with that page taken for two that become
/// one: page numbers from there on moved by `by`.
SeenStory withPagesMoved(SeenStory story, std::size_t from, int by);
/// Spreads that begin on an odd page.
int brokenSpreads(const SeenStory& story);

/// The word in a description that marks a reveal, or empty.
std::string revealWordIn(std::string_view description);

}  // namespace tw
