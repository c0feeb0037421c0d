// Variety of shot sizes as Shannon entropy over the sizes used, divided by the most that so many
// panels could have; variety of areas as standard deviation over mean.

#include "read/rhythm.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace tw {
namespace {

double normalisedEntropy(const std::vector<ShotSize>& shots) {
  if (shots.size() < 2) return 0;
  std::array<int, kShotSizes> counts{};
  for (const ShotSize shot : shots) ++counts[static_cast<std::size_t>(shot)];
  const double n = static_cast<double>(shots.size());
  double entropy = 0;
  for (const int count : counts) {
    if (count > 0) entropy -= count / n * std::log(count / n);
  }
  // n panels over k sizes are as even as they can be when each size has n/k, rounded.
  const std::size_t base = shots.size() / kShotSizes, extra = shots.size() % kShotSizes;
  double most = 0;
  for (std::size_t i = 0; i < kShotSizes; ++i) {
    const double share = static_cast<double>(base + (i < extra ? 1 : 0)) / n;
    if (share > 0) most -= share * std::log(share);
  }
  return entropy / most;
}

double coefficientOfVariation(const std::vector<double>& values) {
  if (values.empty()) return 0;
  const double n = static_cast<double>(values.size());
  double sum = 0, squares = 0;
  for (const double v : values) sum += v;
  const double mean = sum / n;
  for (const double v : values) squares += (v - mean) * (v - mean);
  return mean > 0 ? std::sqrt(squares / n) / mean : 0;
}

}  // namespace

Rhythm rhythmOf(const std::vector<ShotSize>& shots, const std::vector<double>& areas) {
  Rhythm rhythm;
  rhythm.shotVariety = normalisedEntropy(shots);
  rhythm.areaVariety = coefficientOfVariation(areas);
  int run = 0;
  for (std::size_t i = 0; i < shots.size(); ++i) {
    run = i > 0 && shots[i] == shots[i - 1] ? run + 1 : 1;
    if (run > rhythm.longestRun) {
      rhythm.longestRun = run;
      rhythm.runEnds = static_cast<int>(i) + 1;
    }
  }
  return rhythm;
}

}  // namespace tw
