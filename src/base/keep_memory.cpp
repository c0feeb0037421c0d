#include "base/keep_memory.h"

#include <cstdlib>  // says whether this is glibc

#ifdef __GLIBC__
#include <malloc.h>
#endif

namespace tw {

void keepFreedMemory() {
#ifdef __GLIBC__
  constexpr int kMiB = 1 << 20;
  ::mallopt(M_MMAP_THRESHOLD, 64 * kMiB);
  ::mallopt(M_TRIM_THRESHOLD, 256 * kMiB);
#endif
}

void keepMemoryFlat() {
#ifdef __GLIBC__
  constexpr int kKiB = 1 << 10;
  ::mallopt(M_MMAP_THRESHOLD, 256 * kKiB);
  ::mallopt(M_ARENA_MAX, 2);
#endif
}

}  // namespace tw
