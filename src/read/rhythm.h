// Variety of shot sizes and panel areas along the page, and runs of the same. Common practice.
#pragma once

#include <vector>

#include "job/words.h"

namespace tw {

struct Rhythm {
  double shotVariety = 0;  ///< normalised entropy of shot sizes, 0 all the same … 1 all differ
  int longestRun = 0;      ///< most panels in a row with the same shot size
  int runEnds = 0;         ///< panel number where that run ends
  double areaVariety = 0;  ///< coefficient of variation of the areas
};

Rhythm rhythmOf(const std::vector<ShotSize>& shots, const std::vector<double>& areas);

}  // namespace tw
