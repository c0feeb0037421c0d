#include "command/silence.h"

#include <fmt/format.h>

#include "command/job_pages.h"
#include "command/read_page.h"
#include "command/story.h"
#include "review/evidence.h"
#include "review/silence.h"

namespace tw {

namespace {

Result<std::string> beatOf(const SilenceRequest& request, const Page& page) {
  if (request.panel == 0) return std::string();
  const auto at = static_cast<std::size_t>(request.panel) - 1;
  if (request.panel > 0 && at < page.beats.size()) return page.beats[at].id;
  return badInput(fmt::format("The page has no panel {}.", request.panel), {.page = page.number},
                  fmt::format("It has panels 1 to {}.", page.beats.size()));
}

Result<void> mustBeKnown(const std::string& rule) {
  const auto book = EvidenceBook::load();
  if (!book) return tl::unexpected(book.error());
  if (book->knows(rule)) return {};
  std::string names;
  for (const auto& [name, about] : book->rules()) names += (names.empty() ? "" : ", ") + name;
  return badInput(fmt::format("There is no rule \"{}\".", rule), {},
                  "The rules are: " + names + ".");
}

Result<void> written(const SilenceRequest& request) {
  auto open = openJob(request.job);
  if (!open) return tl::unexpected(open.error());
  if (auto writable = mustBeWritable(*open); !writable) return writable;
  const auto numbers = pagesAsked(open->job, request.page);
  if (!numbers) return tl::unexpected(numbers.error());
  Page& page = *open->job.page(numbers->front());
  const auto beat = beatOf(request, page);
  if (!beat) return tl::unexpected(beat.error());
  auto done = request.back ? unsilence(page, request.rule, *beat) : mustBeKnown(request.rule);
  if (done && !request.back) done = silence(page, {request.rule, *beat, request.reason});
  if (!done) return done;
  return open->folder.savePage(page);
}

/// All that is found on the page at present, by its rough and by the story.
std::vector<Finding> findingsOn(const SilenceRequest& request) {
  std::vector<Finding> out;
  ReadPageRequest ask;
  ask.job = request.job;
  ask.page = request.page;
  ask.readers = 200;
  ask.tryRemedies = false;
  Progress progress;
  if (auto read = readStagedPage(ask, progress)) out = std::move(read->findings);
  if (auto told = storyTold(request.job))
    for (Finding& finding : told->findings)
      if (finding.page == request.page) out.push_back(std::move(finding));
  return out;
}

}  // namespace

Result<Answered> silenceFinding(const SilenceRequest& request) {
  if (auto done = written(request); !done) return tl::unexpected(done.error());
  Answered out;
  for (const Finding& finding : findingsOn(request)) {
    if (finding.rule != request.rule) continue;
    out.isFoundNow |= finding.panel == request.panel;
    out.standsAt.push_back(finding.panel > 0 ? fmt::format("panel {}", finding.panel)
                                             : std::string("the page as a whole"));
  }
  return out;
}

}  // namespace tw
