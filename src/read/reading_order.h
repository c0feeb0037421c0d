// In which order will readers take these panels? A step-by-step stochastic reader built on the
// published preferences for empty page layouts (see reading_order.cpp for sources).
#pragma once

#include <string>
#include <vector>

#include "geometry/shapes.h"
#include "job/words.h"
#include "read/preferences.h"

namespace tw {

struct Ambiguity {
  int after = 0;     ///< panel number (1 = first intended) after which the choice arises; 0 = entry
  double taken = 1;  ///< probability that the intended next panel is taken here
  int rival = 0;     ///< the likeliest other panel, 0 if none
  std::string cause;  ///< "stack beside a tall panel", "wide gap", "stagger", "overlap", …
};

struct OrderReading {
  std::vector<int> likely;       ///< panel numbers (1 = first intended) in the likeliest order
  double followed = 0;           ///< probability that the whole intended order is taken
  std::vector<Ambiguity> steps;  ///< those with taken < 0.95
};

/// `panels` in the intended order; insets after the panel they lie on or as intended.
/// `layer[i]` > 0 marks panels lying on another one; pass {} when none do.
OrderReading readOrder(const std::vector<Polygon>& panels, ReadingDirection direction,
                       const std::vector<int>& layer = {},
                       const ReaderPreferences& likes = shippedPreferences());

/// Share of readers that take the across-then-down path at a 2 × 2 place whose second column is
/// one panel shifted by `stagger` (0 grid … 1 full blockage), gap ratio and overlap as given.
double acrossShare(double stagger, double gapRatio = 1, double overlap = 0,
                   const ReaderPreferences& likes = shippedPreferences());

/// A plain sort by top, then left: the baseline that misreads stacks.
std::vector<int> naiveOrder(const std::vector<Polygon>& panels, ReadingDirection direction);

}  // namespace tw
