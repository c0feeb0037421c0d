// Former states of the files of a job, in .history/ beside them, oldest dropped first.
#pragma once

#include <filesystem>
#include <string_view>
#include <vector>

#include "base/result.h"

namespace tw {

/// Keeps `bytes` as the newest former state of `file` (a path inside `folder`), as
/// .history/FILE.NNNN, and drops what is older than the last kHistoryKept.
Result<void> keepFormerState(const std::filesystem::path& folder, const std::filesystem::path& file,
                             std::string_view bytes);

struct FormerState {
  int number = 0;  ///< counts up through the file's life
  std::filesystem::path file;
};
/// The former states of a file of the job that are still kept, the oldest first.
std::vector<FormerState> formerStates(const std::filesystem::path& folder,
                                      const std::filesystem::path& file);

}  // namespace tw
