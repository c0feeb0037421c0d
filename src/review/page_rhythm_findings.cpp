// Page by page: somebody from head to foot, figures of one size in a row, words over the panels.
#include <fmt/format.h>

#include "letter/lettering.h"
#include "read/full_figure.h"
#include "read/size_runs.h"
#include "read/word_spread.h"
#include "review/story_findings.h"

namespace tw {

namespace {

constexpr int kMostOfOneSize = 3, kFarTooMany = 5;  // panels in a row; ours

std::vector<double> headsOf(const StoryPage& page) {
  std::vector<double> out;
  for (const StoryPanel& panel : page.panels) out.push_back(panel.headMm);
  return out;
}

std::vector<int> wordsOf(const StoryPage& page) {
  std::vector<int> out;
  for (const StoryPanel& panel : page.panels) out.push_back(panel.words);
  return out;
}

const StoryPanel* panelNumbered(const StoryPage& page, int number) {
  return &page.panels[static_cast<std::size_t>(number - 1)];
}

Finding notMeasured(const StoryPage& page) {
  Finding out = findingAt(page, nullptr, "not measured", Severity::Look);
  out.evidence = Evidence::Ours;
  out.source = {};
  out.measure = "roughs of this draft";
  out.limit = 1;
  out.unit = "roughs";
  out.reason = fmt::format(
      "{} has no rough of this draft yet: shots, figures, settings and the fold are not measured.",
      page.spread ? inWords(page) + " together" : inWords(page));
  out.reason[0] = 'P';
  out.remedy = fmt::format("Make its roughs: tierwright roughs JOB --page {}.", page.number);
  return out;
}

void addFullFigure(const StoryPage& page, std::vector<Finding>& out) {
  const FullFigure full = fullFigureOn(page);
  if (full.isKept()) return;
  Finding finding = findingAt(page, nullptr, "full figure on the page", Severity::Look);
  finding.measure = "the most that is seen of a figure that no frame cuts";
  finding.value = full.shown * 100;
  finding.limit = kFullFigureSeen * 100;
  finding.unit = "%";
  finding.reason = full.panel == 0
                       ? "Nobody is seen from head to foot on this page."
                       : fmt::format("The fullest figure, in panel {}, is only {:.0f} % in sight.",
                                     full.panel, full.shown * 100);
  finding.remedy = "Open one panel to a long shot.";
  out.push_back(std::move(finding));
}

/// What the run would be with the figure in the middle of it drawn at another size.
TriedRemedy otherSizeInTheMiddle(std::vector<double> heads, const SizeRun& run) {
  const int middle = run.ends - run.length / 2;
  heads[static_cast<std::size_t>(middle - 1)] = 1.5 * run.tallest;
  const int after = longestSizeRun(heads).length;
  return {fmt::format("draw the figure of panel {} half as large again", middle),
          static_cast<double>(run.length),
          static_cast<double>(after),
          after < run.length,
          {}};
}

void addSizes(const StoryPage& page, std::vector<Finding>& out) {
  const std::vector<double> heads = headsOf(page);
  const SizeRun run = longestSizeRun(heads);
  if (run.length <= kMostOfOneSize) return;
  const int first = run.ends - run.length + 1;
  Finding finding = findingAt(page, panelNumbered(page, first), "sizes in a row",
                              run.length >= kFarTooMany ? Severity::Should : Severity::Look);
  finding.measure = "panels in a row with heads of one height, within a tenth";
  finding.value = run.length;
  finding.limit = kMostOfOneSize;
  finding.unit = "panels";
  finding.reason = fmt::format("From panel {} to {} all heads are {:.0f} to {:.0f} mm high.", first,
                               run.ends, run.lowest, run.tallest);
  finding.remedy = "Step nearer or farther in one of them.";
  finding.tried = {otherSizeInTheMiddle(heads, run)};
  out.push_back(std::move(finding));
}

void addWords(const Page& own, const StoryPage& page, std::vector<Finding>& out) {
  const WordSpread words = wordSpreadOf(wordsOf(page));
  const int most = mostWordsPerPanel(static_cast<int>(page.panels.size()));
  for (const StoryPanel& panel : page.panels) {
    if (panel.words <= most) continue;
    Finding finding = findingAt(page, &panel, "words in a panel", Severity::Should);
    finding.measure = "words in the panel";
    finding.value = panel.words;
    finding.limit = most;
    finding.unit = "words";
    finding.reason =
        fmt::format("{} words in one of {} panels; the page's mean is {:.0f}, give or take {:.0f}.",
                    panel.words, page.panels.size(), words.mean, words.spread);
    finding.remedy = "Share the copy out between panels, or ask the writer for cuts.";
    out.push_back(std::move(finding));
  }
  if (words.total <= own.brief.mostWords) return;
  Finding finding = findingAt(page, nullptr, "words on the page", Severity::Must);
  finding.measure = "words on the page";
  finding.value = words.total;
  finding.limit = own.brief.mostWords;
  finding.unit = "words";
  finding.reason = fmt::format("{} words; the brief allows {}.", words.total, own.brief.mostWords);
  finding.remedy = "Ask the writer for cuts, or the editor for more.";
  out.push_back(std::move(finding));
}

}  // namespace

std::vector<Finding> pageRhythmFindings(const Job& job, const SeenStory& story) {
  std::vector<Finding> out;
  for (const StoryPage& page : story.pages) {
    if (!page.measured) {
      out.push_back(notMeasured(page));
    } else {
      addFullFigure(page, out);
      addSizes(page, out);
    }
    if (const Page* own = job.page(page.number); own != nullptr) addWords(*own, page, out);
  }
  return out;
}

}  // namespace tw
