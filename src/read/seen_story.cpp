#include "read/seen_story.h"

#include <fmt/format.h>

namespace tw {

std::vector<StoryPlace> placesOf(const SeenStory& story) {
  std::vector<StoryPlace> out;
  for (std::size_t p = 0; p < story.pages.size(); ++p)
    for (std::size_t i = 0; i < story.pages[p].panels.size(); ++i) out.push_back({p, i});
  return out;
}

std::string inWords(const StoryPage& page) {
  if (page.spread) return fmt::format("pages {}–{}", page.number, page.number + 1);
  return fmt::format("page {}", page.number);
}

std::string inWords(const SeenStory& story, StoryPlace at) {
  return fmt::format("{} panel {}", inWords(story.pages[at.page]), panelAt(story, at).number);
}

}  // namespace tw
