// A lock on a job folder that dies with the process that holds it. It keeps two programs from
// writing one job; reading needs none.
#pragma once

#include <filesystem>

namespace tw {

/// Takes the lock file without waiting. Returns an open descriptor, or -1 when another holds it
/// or the folder cannot be written.
int takeLock(const std::filesystem::path& file);
void dropLock(int descriptor);

}  // namespace tw
