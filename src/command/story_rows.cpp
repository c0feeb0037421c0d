#include <fmt/format.h>

#include <algorithm>

#include "command/story.h"
#include "read/full_figure.h"

namespace tw {

namespace {

std::string inSight(const StoryPage& page, const std::string& value) {
  return page.measured ? value : "not measured";
}

std::string shotsInWords(const StoryPage& page) {
  if (!page.measured || page.panels.empty()) return inSight(page, "-");
  const auto [near, far] = std::ranges::minmax(page.panels, {}, &StoryPanel::shot);
  if (near.shot == far.shot) return std::string(nameOf(near.shot));
  return fmt::format("{} to {}", nameOf(far.shot), nameOf(near.shot));
}

}  // namespace

std::vector<std::vector<std::string>> storyRows(const StoryTold& told) {
  std::vector<std::vector<std::string>> rows{{"pages", "rough", "stands", "panels", "words",
                                              "seconds", "mean panel", "silent", "full figure",
                                              "shots"}};
  for (const StoryPage& page : told.story.pages) {
    const PageTempo tempo = pageTempoOf(page);
    const FullFigure full = fullFigureOn(page);
    rows.push_back(
        {page.spread ? fmt::format("{}-{}", page.number, page.number + 1)
                     : std::to_string(page.number),
         page.measured ? page.rough : "none", std::string(nameOf(pagePlaceOf(page))),
         std::to_string(tempo.panels), std::to_string(tempo.words),
         fmt::format("{:.0f}", tempo.seconds),
         inSight(page, fmt::format("{:.0f} %", tempo.meanAreaShare * 100)),
         fmt::format("{:.0f} %", tempo.wordless * 100),
         inSight(page, full.isKept() ? full.panel > 0 ? fmt::format("panel {}", full.panel) : "-"
                                     : "none"),
         shotsInWords(page)});
  }
  return rows;
}

}  // namespace tw
