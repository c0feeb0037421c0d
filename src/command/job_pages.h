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

/// Index of the page's rough of that name; bad input says which there are.
Result<std::size_t> roughNamed(const Page& page, const std::string& name);

/// Index of the rough's panel of that number, from 1 in reading order.
Result<std::size_t> panelNumbered(const Page& page, const Rough& rough, int number);

/// The beat, as corrected, that a panel of the rough shows; bad input when the script has lost it.
Result<Beat> beatShown(const Page& page, const Rough& rough, std::size_t panel);

/// Refused with a sentence when another process has the job open.
Result<void> mustBeWritable(const JobFolder& folder);
inline Result<void> mustBeWritable(const OpenJob& open) {
  return mustBeWritable(open.folder);
}

}  // namespace tw
