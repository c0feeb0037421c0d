#include "command/job_pages.h"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>

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

Result<std::size_t> roughNamed(const Page& page, const std::string& name) {
  const auto found = std::ranges::find(page.roughs, name, &Rough::name);
  if (found != page.roughs.end()) return static_cast<std::size_t>(found - page.roughs.begin());
  std::vector<std::string> names;
  for (const Rough& rough : page.roughs) names.push_back(rough.name);
  return badInput(fmt::format("There is no rough \"{}\".", name), {.page = page.number},
                  names.empty() ? "Make the page's roughs first: tierwright roughs."
                                : fmt::format("The page has {}.", fmt::join(names, ", ")));
}

Result<std::size_t> panelNumbered(const Page& page, const Rough& rough, int number) {
  const auto count = static_cast<int>(rough.panels.size());
  if (number >= 1 && number <= count) return static_cast<std::size_t>(number - 1);
  return badInput(fmt::format("Rough {} has no panel {}.", rough.name, number),
                  {.page = page.number}, fmt::format("Its panels go from 1 to {}.", count));
}

Result<Beat> beatShown(const Page& page, const Rough& rough, std::size_t panel) {
  const std::string& id = rough.panels[panel].beat;
  for (const Beat& beat : page.correctedBeats())
    if (beat.id == id) return beat;
  return badInput(
      fmt::format("Rough {} shows panel {}, which is no longer in the script.", rough.name, id),
      {.page = page.number}, "Make new roughs for the page.");
}

Result<void> mustBeWritable(const JobFolder& folder) {
  if (!folder.readOnly()) return {};
  return badInput("The job is open in another program and can only be read.",
                  {.file = folder.path().string()}, "Close it there and try again.");
}

}  // namespace tw
