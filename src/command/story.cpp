#include "command/story.h"

#include "command/job_pages.h"
#include "review/story_findings.h"
#include "review/story_of_job.h"

namespace tw {

Result<StoryTold> storyTold(const std::filesystem::path& folder) {
  auto open = openJob(folder);
  if (!open) return tl::unexpected(open.error());
  StoryTold out;
  out.job = std::move(open->job);
  out.story = storyOf(out.job);
  out.tempo = tempoOf(out.story);
  out.reveals = revealsOf(out.story);
  out.settings = settingsShown(out.story);
  out.findings = storyFindings(out.job);
  return out;
}

}  // namespace tw
