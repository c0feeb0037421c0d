// A page of a job opened for measuring: the job, what the page asks, and its rough measured as it
// is stored. What reading, mending and the desk begin with.
#pragma once

#include <filesystem>
#include <memory>
#include <string>

#include "command/job_pages.h"
#include "compose/measured_page.h"

namespace tw {

/// Stays where it is made: its parts point at each other.
struct StagedPage {
  OpenJob open;
  Workshop workshop;
  LightWords lights;
  PageCase wishes;
  int page = 0;
  std::size_t rough = 0;  ///< index among the page's
  std::unique_ptr<MeasuredPage> measured;

  StagedPage(OpenJob job, Workshop shop) : open(std::move(job)), workshop(std::move(shop)) {}
  StagedPage(const StagedPage&) = delete;
  StagedPage& operator=(const StagedPage&) = delete;

  Page& stored() { return *open.job.page(page); }
};

/// An empty rough's name takes the chosen one, else the first. Bad input when there is no such page
/// or rough, or the script has changed since the rough was made.
Result<std::unique_ptr<StagedPage>> openStagedPage(const std::filesystem::path& job, int page,
                                                   const std::string& rough, unsigned threads = 0);

}  // namespace tw
