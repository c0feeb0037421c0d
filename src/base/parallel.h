// Runs one piece of work per index on several threads. Results must be written by index, so the
// outcome does not depend on the number of threads.
#pragma once

#include <cstddef>
#include <functional>

namespace tw {

/// Threads to use when the artist did not say: the machine's cores, at least 1.
unsigned defaultThreads();

/// Calls work(i) for each i in [0, count), in no fixed order, on up to `threads` threads
/// (0 = defaultThreads()). Returns when all are done. `work` must not throw.
void parallelFor(std::size_t count, unsigned threads, const std::function<void(std::size_t)>& work);

}  // namespace tw
