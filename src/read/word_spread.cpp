// mean = Σ w / n; spread = √(Σ (w − mean)² / n), over all n panels of the page and not a sample.
#include "read/word_spread.h"

#include <cmath>

namespace tw {

WordSpread wordSpreadOf(const std::vector<int>& words) {
  WordSpread out;
  if (words.empty()) return out;
  for (std::size_t i = 0; i < words.size(); ++i) {
    out.total += words[i];
    out.silent += words[i] == 0 ? 1 : 0;
    if (words[i] <= out.most) continue;
    out.most = words[i];
    out.mostAt = static_cast<int>(i) + 1;
  }
  const double n = static_cast<double>(words.size());
  out.mean = out.total / n;
  double squares = 0;
  for (const int w : words) squares += (w - out.mean) * (w - out.mean);
  out.spread = std::sqrt(squares / n);
  return out;
}

}  // namespace tw
