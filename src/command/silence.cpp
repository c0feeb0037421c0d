#include "command/silence.h"

#include <fmt/format.h>

#include "command/job_pages.h"
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

}  // namespace

Result<void> silenceFinding(const SilenceRequest& request) {
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

}  // namespace tw
