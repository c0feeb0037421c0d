#include "base/files.h"

#include <fcntl.h>
#include <fmt/format.h>
#include <sys/stat.h>
#include <unistd.h>

#include <cerrno>
#include <cstdlib>
#include <cstring>
#include <fstream>
#include <sstream>

namespace tw {

namespace fs = std::filesystem;

namespace {

/// A name under which no file can lie is the artist's to mend; all else is not.
tl::unexpected<Problems> writeFailed(const fs::path& path, int error) {
  if (error == ENOTDIR || error == EISDIR || error == ENAMETOOLONG)
    return badInput(fmt::format("No file can be written there: {}.", std::strerror(error)),
                    {.file = path.string()}, "Name a file in a folder.");
  return ourFault(fmt::format("The file could not be written: {}.", std::strerror(error)),
                  {.file = path.string()}, "Check free space and permissions, then try again.");
}

/// Writes all bytes and flushes them to the disk; returns 0 or errno.
int writeAll(int descriptor, std::string_view bytes) {
  while (!bytes.empty()) {
    const ssize_t n = ::write(descriptor, bytes.data(), bytes.size());
    if (n < 0 && errno == EINTR) continue;
    if (n < 0) return errno;
    bytes.remove_prefix(static_cast<std::size_t>(n));
  }
  return ::fsync(descriptor) == 0 ? 0 : errno;
}

void flushFolder(const fs::path& folder) {
  const int descriptor = ::open(folder.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC);
  if (descriptor < 0) return;
  ::fsync(descriptor);  // best effort: some file systems refuse to sync a folder
  ::close(descriptor);
}

mode_t modeFor(const fs::path& path) {
  struct stat info {};
  if (::stat(path.c_str(), &info) == 0) return info.st_mode & 07777;
  const mode_t mask = ::umask(0);
  ::umask(mask);
  return 0666 & ~mask;
}

}  // namespace

Result<std::string> readFile(const fs::path& path, std::uintmax_t most) {
  std::error_code error;
  const fs::file_status status = fs::status(path, error);
  if (error || !fs::exists(status))
    return badInput("The file does not exist.", {.file = path.string()}, "Check the name.");
  if (!fs::is_regular_file(status))
    return badInput("This is not a file.", {.file = path.string()}, "Name a file, not a folder.");
  const std::uintmax_t size = fs::file_size(path, error);
  if (!error && size > most)
    return badInput(fmt::format("The file has {} bytes; at most {} were expected.", size, most),
                    {.file = path.string()}, "Is this the right file?");
  std::ifstream in(path, std::ios::binary);
  std::ostringstream out;
  if (!in || (size > 0 && !(out << in.rdbuf())))
    return badInput("The file could not be read.", {.file = path.string()}, "Check permissions.");
  return out.str();
}

Result<void> writeFileAtomically(const fs::path& path, std::string_view bytes) {
  const fs::path folder = path.has_parent_path() ? path.parent_path() : fs::path(".");
  std::error_code error;
  fs::create_directories(folder, error);
  std::string temporary = (folder / (path.filename().string() + ".XXXXXX")).string();
  const int descriptor = ::mkostemp(temporary.data(), O_CLOEXEC);
  if (descriptor < 0) return writeFailed(path, errno);
  ::fchmod(descriptor, modeFor(path));
  int failed = writeAll(descriptor, bytes);
  if (::close(descriptor) != 0 && failed == 0) failed = errno;
  if (failed == 0 && ::rename(temporary.c_str(), path.c_str()) != 0) failed = errno;
  if (failed != 0) {
    ::unlink(temporary.c_str());
    return writeFailed(path, failed);
  }
  flushFolder(folder);
  return {};
}

namespace {

/// Where presets may lie. A folder named by the user is the only one: falling back to another
/// would hide that a file is missing from it.
std::vector<fs::path> presetRoots() {
  if (const char* named = std::getenv("TIERWRIGHT_PRESETS")) return {named};
  std::vector<fs::path> roots;
  std::error_code error;
  const fs::path program = fs::read_symlink("/proc/self/exe", error);
  if (error) return roots;
  for (fs::path dir = program.parent_path(); dir.has_relative_path(); dir = dir.parent_path())
    roots.push_back(dir / "presets");
  roots.push_back(program.parent_path().parent_path() / "share/tierwright/presets");
  return roots;
}

}  // namespace

Result<fs::path> presetPath(std::string_view nameBelowPresets) {
  std::error_code error;
  for (const fs::path& root : presetRoots())
    if (fs::exists(root / nameBelowPresets, error)) return root / nameBelowPresets;
  return ourFault(fmt::format("The presets hold no {}.", nameBelowPresets), {},
                  "Set TIERWRIGHT_PRESETS to the presets folder that came with the program.");
}

}  // namespace tw
