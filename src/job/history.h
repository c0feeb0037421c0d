// Former states of the files of a job, in .history/ beside them, oldest dropped first. Nothing here
// reads them again: an artist copies back what she wants.
#pragma once

#include <filesystem>
#include <string_view>

#include "base/result.h"

namespace tw {

/// Keeps `bytes` as the newest former state of `file` (a path inside `folder`), as
/// .history/FILE.NNNN, and drops what is older than the last kHistoryKept.
Result<void> keepFormerState(const std::filesystem::path& folder, const std::filesystem::path& file,
                             std::string_view bytes);

}  // namespace tw
