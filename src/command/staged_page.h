// A page of a job opened for measuring: the job, what the page asks, and its rough measured as it
// is stored. What reading, mending and the desk begin with.
#pragma once

#include <filesystem>
#include <memory>
#include <optional>
#include <string>

#include "command/job_pages.h"
#include "compose/measured_page.h"

namespace tw {

/// Stays where it is made: its parts point at each other.
struct StagedPage {
  Job job;
  std::shared_ptr<const Workshop> workshop;
  LightWords lights;
  PageCase wishes;
  int page = 0;
  std::size_t rough = 0;  ///< index among the page's
  std::unique_ptr<MeasuredPage> measured;
  std::optional<JobFolder> folder;  ///< of a page that was opened from disk

  StagedPage(Job itsJob, std::shared_ptr<const Workshop> shop)
      : job(std::move(itsJob)), workshop(std::move(shop)) {}
  StagedPage(const StagedPage&) = delete;
  StagedPage& operator=(const StagedPage&) = delete;

  Page& stored() { return *job.page(page); }
  const Page& stored() const { return *job.page(page); }
};

/// An empty rough's name takes the chosen one, else the first. Bad input when there is no such page
/// or rough, or the script has changed since the rough was made.
Result<std::unique_ptr<StagedPage>> openStagedPage(const std::filesystem::path& job, int page,
                                                   const std::string& rough, unsigned threads = 0);

/// The same for a job at hand. `workshop` must have been made for the job's present cast, beats and
/// models.
Result<std::unique_ptr<StagedPage>> stagePage(Job job, std::shared_ptr<const Workshop> workshop,
                                              int page, const std::string& rough,
                                              unsigned threads = 0);

}  // namespace tw
