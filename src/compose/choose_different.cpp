// Greedy choice by margin, as in maximal marginal relevance (Carbonell & Goldstein 1998,
// doi:10.1145/290941.291025): each next rough trades its score against its nearness to those
// chosen already. O(keep × roughs) comparisons.
#include "compose/choose_different.h"

#include <algorithm>
#include <limits>

#include "compose/layout_search.h"

namespace tw {

namespace {

constexpr double kShapesCount = 0.7;  // an editor sees the shapes of a page before its pictures

bool stagedAlike(const StagingChoice& a, const StagingChoice& b) {
  return a.shot == b.shot && a.mirrored == b.mirrored && (a.sideDeg < 0) == (b.sideDeg < 0) &&
         a.eye == b.eye;
}

double stagingUnlikeness(const Rough& a, const Rough& b) {
  double different = 0;
  for (std::size_t i = 0; i < a.panels.size(); ++i)
    if (!stagedAlike(a.panels[i].staging.choice, b.panels[i].staging.choice)) different += 1;
  return different / static_cast<double>(a.panels.size());
}

}  // namespace

double unlikeness(const Measured& a, const Measured& b, const Sheet& sheet) {
  const double treatment = a.layout.treatment == b.layout.treatment ? 0 : 0.25;
  const double shapes = std::min(1.0, unlikeness(a.layout, b.layout, sheet) + treatment);
  return kShapesCount * shapes + (1 - kShapesCount) * stagingUnlikeness(a.rough, b.rough);
}

std::vector<std::size_t> chooseDifferent(const std::vector<Measured>& roughs, const Sheet& sheet,
                                         std::size_t keep, double spread) {
  std::vector<std::size_t> chosen;
  std::vector<double> nearest(roughs.size(), 1);
  while (chosen.size() < std::min(keep, roughs.size())) {
    std::size_t best = roughs.size();
    double bestMargin = std::numeric_limits<double>::infinity();
    for (std::size_t i = 0; i < roughs.size(); ++i) {
      if (std::find(chosen.begin(), chosen.end(), i) != chosen.end()) continue;
      const double margin = roughs[i].rough.score - spread * nearest[i];
      if (margin < bestMargin) {
        bestMargin = margin;
        best = i;
      }
    }
    chosen.push_back(best);
    for (std::size_t i = 0; i < roughs.size(); ++i)
      nearest[i] = std::min(nearest[i], unlikeness(roughs[i], roughs[best], sheet));
  }
  return chosen;
}

}  // namespace tw
