#include "command/roughs.h"

#include <algorithm>
#include <chrono>
#include <utility>

#include "command/job_models.h"
#include "command/job_pages.h"
#include "compose/hand_work.h"
#include "compose/rough_names.h"

namespace tw {

namespace {

/// The chosen one, those named, and those that the artist's own hand can be told in.
bool isKept(const Rough& rough, const Page& page, const std::vector<std::string>& unlike) {
  return rough.name == page.choice || hasHandWork(rough) ||
         std::ranges::find(unlike, rough.name) != unlike.end();
}

Result<std::vector<Rough>> keptRoughs(const Page& page, const std::vector<std::string>& unlike) {
  for (const std::string& name : unlike)
    if (auto found = roughNamed(page, name); !found) return tl::unexpected(found.error());
  std::vector<Rough> out;
  for (const Rough& rough : page.roughs)
    if (isKept(rough, page, unlike)) out.push_back(rough);
  return out;
}

bool comesBeforeByName(const Rough& a, const Rough& b) {
  return comesBefore(a.name, b.name);
}

/// The kept ones under their names, the new ones under the names that are free. By name, unless the
/// artist had ranked them otherwise: then hers come first, in her order.
std::vector<Rough> withKept(std::vector<Rough> kept, std::vector<Rough> roughs) {
  const bool ranked = !std::ranges::is_sorted(kept, comesBeforeByName);
  std::vector<Rough> out = std::move(kept);
  for (Rough& rough : roughs) {
    rough.name = freeRoughName(out);
    out.push_back(std::move(rough));
  }
  if (!ranked) std::ranges::stable_sort(out, comesBeforeByName);
  return out;
}

Result<void> mustBeOnePage(const RoughsRequest& request) {
  if (request.unlike.empty() || request.page) return {};
  return badInput("Roughs to be unlike are those of one page.", {}, "Name the page with --page.");
}

}  // namespace

Result<FoundRoughs> findRoughs(const Job& job, const Page& page, const Workshop& workshop,
                               const ComposeOptions& options,
                               const std::vector<std::string>& unlike, Progress& progress) {
  auto kept = keptRoughs(page, unlike);
  if (!kept) return tl::unexpected(kept.error());
  ComposeOptions asked = options;
  if (!unlike.empty()) asked.unlike = *kept;
  auto composed = compose(job, page, workshop, asked, progress);
  if (!composed) return tl::unexpected(composed.error());
  composed->roughs = withKept(std::move(*kept), std::move(composed->roughs));
  FoundRoughs out{page, std::move(*composed)};
  out.page.roughs = out.composed.roughs;
  return out;
}

Result<std::vector<PageRoughs>> makeRoughs(const RoughsRequest& request, Progress& progress) {
  if (auto one = mustBeOnePage(request); !one) return tl::unexpected(one.error());
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
    auto found = findRoughs(open->job, page, *workshop, request.options, request.unlike, progress);
    if (!found) return tl::unexpected(found.error());
    const std::vector<Rough> before = std::exchange(page, std::move(found->page)).roughs;
    const auto gone = std::ranges::count_if(before, [&](const Rough& rough) {
      return std::ranges::find(page.roughs, rough) == page.roughs.end();
    });
    if (auto saved = open->folder.savePage(page); !saved) return tl::unexpected(saved.error());
    const std::chrono::duration<double> took = std::chrono::steady_clock::now() - start;
    out.push_back({std::move(found->composed), took.count(), static_cast<int>(gone), {}});
    for (const Beat& beat : page.correctedBeats())
      if (!beat.notDrawn.empty()) out.back().notDrawn[beat.id] = beat.notDrawn;
  }
  return out;
}

}  // namespace tw
