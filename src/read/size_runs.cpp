// For each panel the longest run that ends there: go back from it while
//
//    tallest ≤ (1 + within) · lowest
//
// holds for all heads from there on. Runs of figures, not of shots: a child in a long shot and a
// man in a very long one can be drawn at one size. Cost: the square of the panels on a page.
#include "read/size_runs.h"

#include <algorithm>

namespace tw {

namespace {

constexpr double kRoundOff = 1e-9;

SizeRun runEndingAt(const std::vector<double>& heads, std::size_t end, double within) {
  SizeRun run;
  for (std::size_t i = end + 1; i-- > 0;) {
    if (heads[i] <= 0) break;
    const double lowest = run.length > 0 ? std::min(run.lowest, heads[i]) : heads[i];
    const double tallest = run.length > 0 ? std::max(run.tallest, heads[i]) : heads[i];
    if (tallest > (1 + within) * lowest + kRoundOff) break;
    run = {run.length + 1, static_cast<int>(end) + 1, lowest, tallest};
  }
  return run;
}

}  // namespace

SizeRun longestSizeRun(const std::vector<double>& headsMm, double within) {
  SizeRun longest;
  for (std::size_t end = 0; end < headsMm.size(); ++end) {
    const SizeRun run = runEndingAt(headsMm, end, within);
    if (run.length > longest.length) longest = run;
  }
  return longest;
}

}  // namespace tw
