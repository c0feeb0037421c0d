// flock() belongs to the open file description: the kernel drops it when the program ends in any
// way, so no stale lock can stay behind, and two opens in one process exclude each other as well.
#include "job/lock.h"

#include <fcntl.h>
#include <sys/file.h>
#include <unistd.h>

namespace tw {

int takeLock(const std::filesystem::path& file) {
  const int descriptor = ::open(file.c_str(), O_RDWR | O_CREAT | O_CLOEXEC, 0644);
  if (descriptor < 0) return -1;
  if (::flock(descriptor, LOCK_EX | LOCK_NB) == 0) return descriptor;
  ::close(descriptor);
  return -1;
}

void dropLock(int descriptor) {
  if (descriptor >= 0) ::close(descriptor);
}

}  // namespace tw
