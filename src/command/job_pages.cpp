#include "command/job_pages.h"

#include <fmt/format.h>

namespace tw {

Result<OpenJob> openJob(const std::filesystem::path& folder) {
  auto opened = JobFolder::open(folder);
  if (!opened) return tl::unexpected(opened.error());
  auto job = opened->load();
  if (!job) return tl::unexpected(job.error());
  return OpenJob{std::move(*opened), std::move(*job)};
}

Result<std::vector<int>> pagesAsked(const Job& job, std::optional<int> page) {
  std::vector<int> all;
  std::string known;
  for (const Page& p : job.pages) {
    if (page && (p.number == *page || (p.spread && p.number + 1 == *page)))
      return std::vector<int>{p.number};
    all.push_back(p.number);
    known += fmt::format("{}{}", known.empty() ? "" : ", ", p.number);
  }
  if (page)
    return badInput(fmt::format("The job has no page {}.", *page), {},
                    fmt::format("Its pages are {}.", known));
  if (all.empty()) return badInput("The job has no pages.", {}, "Import a script.");
  return all;
}

Result<void> mustBeWritable(const OpenJob& open) {
  if (!open.folder.readOnly()) return {};
  return badInput("The job is open in another program and can only be read.",
                  {.file = open.folder.path().string()}, "Close it there and try again.");
}

}  // namespace tw
