// Figures of one size in a row: panels running whose heads are as high as each other's. Such a run
// reads as a stop in the telling unless it is meant. Common practice, no source; the tenth by which
// sizes may differ and still be called one size is ours.
#pragma once

#include <vector>

namespace tw {

inline constexpr double kSameSize = 0.10;  ///< tallest over lowest head of a run, less one

struct SizeRun {
  int length = 0;
  int ends = 0;  ///< panel number where it ends, from 1
  double lowest = 0, tallest = 0;
};

/// The longest run, the first of several. A head of 0 (nobody in sight) ends a run.
SizeRun longestSizeRun(const std::vector<double>& headsMm, double within = kSameSize);

}  // namespace tw
