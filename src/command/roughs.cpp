#include "command/roughs.h"

#include <algorithm>
#include <chrono>

#include "command/job_models.h"
#include "command/job_pages.h"

namespace tw {

namespace {

const Rough* chosenRough(const Page& page) {
  for (const Rough& rough : page.roughs)
    if (rough.name == page.choice) return &rough;
  return nullptr;
}

/// The chosen rough keeps its name; the new ones take the other letters in order.
std::vector<Rough> withChosen(const Page& page, std::vector<Rough> roughs) {
  const Rough* chosen = chosenRough(page);
  if (chosen == nullptr) return roughs;
  char next = 'A';
  for (Rough& rough : roughs) {
    if (std::string(1, next) == chosen->name) ++next;
    rough.name = std::string(1, next++);
  }
  roughs.push_back(*chosen);
  std::stable_sort(roughs.begin(), roughs.end(),
                   [](const Rough& a, const Rough& b) { return a.name < b.name; });
  return roughs;
}

}  // namespace

Result<std::vector<PageRoughs>> makeRoughs(const RoughsRequest& request, Progress& progress) {
  auto open = openJob(request.job);
  if (!open) return tl::unexpected(open.error());
  if (auto writable = mustBeWritable(*open); !writable) return tl::unexpected(writable.error());
  const auto numbers = pagesAsked(open->job, request.page);
  if (!numbers) return tl::unexpected(numbers.error());
  auto workshop = workshopFor(*open, request.rulesFile);
  if (!workshop) return tl::unexpected(workshop.error());
  std::vector<PageRoughs> out;
  for (int number : *numbers) {
    Page& page = *open->job.page(number);
    const auto start = std::chrono::steady_clock::now();
    auto composed = compose(open->job, page, *workshop, request.options, progress);
    if (!composed) return tl::unexpected(composed.error());
    composed->roughs = withChosen(page, std::move(composed->roughs));
    page.roughs = composed->roughs;
    if (auto saved = open->folder.savePage(page); !saved) return tl::unexpected(saved.error());
    const std::chrono::duration<double> took = std::chrono::steady_clock::now() - start;
    out.push_back({std::move(*composed), took.count(), {}});
    for (const Beat& beat : page.correctedBeats())
      if (!beat.notDrawn.empty()) out.back().notDrawn[beat.id] = beat.notDrawn;
  }
  return out;
}

}  // namespace tw
