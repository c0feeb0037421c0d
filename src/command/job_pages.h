// What most commands begin with: open the job, load it, pick the pages asked for. Whoever goes on
// to write asks first whether the job may be written.
#pragma once

#include <filesystem>
#include <optional>
#include <vector>

#include "base/result.h"
#include "job/job.h"

namespace tw {

struct OpenJob {
  JobFolder folder;
  Job job;
};
Result<OpenJob> openJob(const std::filesystem::path& folder);

/// Numbers of all pages, or the one asked for; bad input when there is no such page. A spread is
/// found by either of its numbers.
Result<std::vector<int>> pagesAsked(const Job& job, std::optional<int> page);

/// Refused with a sentence when another process has the job open.
Result<void> mustBeWritable(const OpenJob& open);

}  // namespace tw
