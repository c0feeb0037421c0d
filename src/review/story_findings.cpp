#include "review/story_findings.h"

#include <algorithm>
#include <tuple>

#include "review/silence.h"
#include "review/story_of_job.h"

namespace tw {

Finding findingAt(const StoryPage& page, const StoryPanel* panel, const char* rule,
                  Severity severity) {
  Finding out;
  out.rule = rule;
  out.severity = severity;
  out.page = page.number;
  if (panel != nullptr) {
    out.panel = panel->number;
    out.beat = panel->beat;
  }
  out.evidence = Evidence::CommonPractice;
  out.source = "common practice, no source";
  return out;
}

std::vector<Finding> storyFindings(const Job& job) {
  const SeenStory story = storyOf(job);
  std::vector<Finding> out;
  for (auto part : {turnFindings, sceneFindings, pageRhythmFindings})
    for (Finding& finding : part(job, story)) out.push_back(std::move(finding));
  std::ranges::stable_sort(
      out, {}, [](const Finding& f) { return std::tuple(f.severity, f.page, f.panel); });
  for (const Page& page : job.pages) applySilenced(out, page);
  return out;
}

}  // namespace tw
