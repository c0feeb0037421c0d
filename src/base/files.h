// The only door to the disk. Reading refuses absurd sizes; writing is all or nothing: temporary
// file in the same folder, fsync, rename, fsync of the folder.
#pragma once

#include <cstdint>
#include <filesystem>
#include <string>
#include <string_view>

#include "base/result.h"

namespace tw {

inline constexpr std::uintmax_t kLargestTextBytes = 16u << 20;  // a long script is under 1 MB

/// The whole file as bytes. Bad input when missing, unreadable, not a file, or larger than `most`.
Result<std::string> readFile(const std::filesystem::path& path,
                             std::uintmax_t most = kLargestTextBytes);

/// Replaces `path` by `bytes` so that a kill at any instant leaves the old or the new file whole.
/// Makes missing parent folders. Keeps the permission bits of a file it replaces.
Result<void> writeFileAtomically(const std::filesystem::path& path, std::string_view bytes);

/// A file that ships with the program (presets/…), found beside the source or the program; or in
/// the folder that the environment variable TIERWRIGHT_PRESETS names, and then only there.
Result<std::filesystem::path> presetPath(std::string_view nameBelowPresets);

}  // namespace tw
