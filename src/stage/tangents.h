// Tangents: contours of two figures or things, or of one and the panel's border, that only just
// touch or run along each other, so that nobody can tell which is nearer.
#pragma once

#include "stage/panel_sight.h"

namespace tw {

struct Tangent {
  int a = -1, b = -1;      ///< solids; b −1 = the panel's border
  bool runsAlong = false;  ///< for a stretch, not at a spot
  Point at;                ///< middle of the stretch, mm on the page
  double lengthMm = 0;
};

/// Longest first. What touches in space too (a hand on a shoulder) is no tangent.
std::vector<Tangent> tangentsOf(const PanelSight& sight);

}  // namespace tw
