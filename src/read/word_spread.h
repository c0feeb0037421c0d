// How the words of a page lie over its panels: their sum, mean and spread, the fullest panel and
// how many say nothing. Common practice, no source.
#pragma once

#include <vector>

namespace tw {

struct WordSpread {
  int total = 0;
  double mean = 0;    ///< words per panel
  double spread = 0;  ///< standard deviation over all panels
  int most = 0;
  int mostAt = 0;  ///< number of the fullest panel, from 1; 0: no words at all
  int silent = 0;  ///< panels without words
};

WordSpread wordSpreadOf(const std::vector<int>& words);

}  // namespace tw
