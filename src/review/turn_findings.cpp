// Reveals that are in view before the page is turned, spreads that do not begin on a left page,
// and what a spread loses in its fold. For reveals, remedies are tried: one page more, or one
// fewer, before the page, and the whole story is counted again.
#include <fmt/format.h>

#include <algorithm>

#include "job/shown_rough.h"
#include "read/fold.h"
#include "read/page_turns.h"
#include "review/called.h"
#include "review/story_findings.h"
#include "review/story_of_job.h"

namespace tw {

namespace {

TriedRemedy triedMove(const SeenStory& story, const Reveal& reveal, int before, int by) {
  const std::string where = inWords(story.pages[reveal.at.page]);
  const SeenStory moved = withPagesMoved(story, reveal.at.page, by);
  TriedRemedy out;
  out.change = by > 0 ? "let the pages before " + where + " run one page longer"
                      : "tell what comes before " + where + " in one page less";
  out.before = before;
  out.after = revealsInView(revealsOf(moved));
  out.helps = out.after < out.before;
  const int broken = brokenSpreads(moved) - brokenSpreads(story);
  if (broken > 0)
    out.aside =
        fmt::format("{} spread{} would begin on a right-hand page", broken, broken == 1 ? "" : "s");
  return out;
}

Finding inView(const SeenStory& story, const Reveal& reveal, int before) {
  const StoryPage& page = story.pages[reveal.at.page];
  Finding out = findingAt(page, &panelAt(story, reveal.at), "page turn",
                          reveal.inWords ? Severity::Should : Severity::Look);
  out.measure = "reveals in view before the page is turned, in the whole story";
  out.value = before;
  out.unit = "reveals";
  out.reason = fmt::format(
      "A reveal stands on page {}, which faces page {}: it is in view as soon as the spread is "
      "open ({}).",
      page.number, page.number - 1, reveal.why);
  out.remedy = "Move it behind a turn, to an even page, or make less of it in the layout.";
  out.tried = {triedMove(story, reveal, before, 1), triedMove(story, reveal, before, -1)};
  std::ranges::stable_sort(out.tried, {}, [](const TriedRemedy& tried) {
    return std::pair(tried.after, !tried.aside.empty());
  });
  return out;
}

Finding startsRight(const StoryPage& page) {
  Finding out = findingAt(page, nullptr, "spread starts left", Severity::Must);
  out.measure = "number of the spread's first page";
  out.value = page.number;
  out.unit = "page";
  out.reason = fmt::format(
      "The spread is on pages {} and {}, which are the two sides of one leaf: only an even page "
      "and the next lie open together.",
      page.number, page.number + 1);
  out.remedy = "Begin it on an even page: one page more or one fewer before it.";
  return out;
}

std::string whatIsLost(const Job& job, const InFold& lost) {
  if (lost.isFace) return calledIn(job, lost.name) + "'s face";
  return "the balloon " + lost.name;
}

void addFold(const Job& job, const Page& page, const StoryPage& seen, std::vector<Finding>& out) {
  const Rough* rough = measuredRoughOf(page);
  if (!page.spread || rough == nullptr) return;
  const Rect band = job.sheetFor(page).foldRect();
  for (const InFold& lost : lostInFold(rough->panels, band)) {
    Finding finding =
        findingAt(seen, &seen.panels[lost.panel],
                  lost.isFace ? "faces in the fold" : "copy in the fold", Severity::Should);
    finding.measure = fmt::format("share of it in the {:.0f} mm about the fold", band.width());
    finding.value = lost.share * 100;
    finding.unit = "%";
    finding.place = lost.place;
    finding.reason = fmt::format("{:.0f} % of {} lies in the fold, where the binding swallows it.",
                                 lost.share * 100, whatIsLost(job, lost));
    finding.remedy = lost.isFace ? "Move the figure, or the frame, to one side of the fold."
                                 : "Set the balloon to one side of the fold.";
    out.push_back(std::move(finding));
  }
}

}  // namespace

std::vector<Finding> turnFindings(const Job& job, const SeenStory& story) {
  std::vector<Finding> out;
  const std::vector<Reveal> reveals = revealsOf(story);
  const int before = revealsInView(reveals);
  for (const Reveal& reveal : reveals)
    if (reveal.place == PagePlace::InView) out.push_back(inView(story, reveal, before));
  for (const StoryPage& page : story.pages) {
    if (page.spread && !startsOnEven(page)) out.push_back(startsRight(page));
    if (const Page* own = job.page(page.number); own != nullptr) addFold(job, *own, page, out);
  }
  return out;
}

}  // namespace tw
