// How much of a figure and of each of its limbs the panel shows, and what takes the rest.
#pragma once

#include <map>

#include "stage/panel_sight.h"

namespace tw {

struct Visibility {
  double visible = 0;  ///< share of its own picture that the panel shows, 0…1
  double share = 0;    ///< of the panel's area
  PerLimb<double> limbs{};
  double overlap = 0;  ///< share of its own picture, in the panel, that another figure's meets
  double cutOff = 0;   ///< share beyond the panel's edge
  /// Per solid that stands before it: share of its own picture.
  std::map<int, double> hiddenBy;
};

/// What of that can be told without the own pictures of others.
struct PlainShares {
  double visible = 0, share = 0;
};
PlainShares plainShares(const PanelSight& sight, int index);

/// Of the figure that is solid `index`.
Visibility visibilityOf(const PanelSight& sight, int index);

}  // namespace tw
