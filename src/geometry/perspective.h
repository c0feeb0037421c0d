// The perspective of one panel as lines to draw over: what stage works out from the camera and
// press prints in a light blue for pencilling. Coordinates in mm on the page.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "geometry/shapes.h"

namespace tw {

struct RuledLine {
  Point from, to;
  /// Of the base weight: 1 for the horizon, less for the rest.
  double weight = 1;
};

/// Where parallel lines of the scene run together on the picture's plane.
struct VanishingPoint {
  std::string of;  ///< "left to right", "away", "upright"
  Point at;        ///< may lie far outside the panel
};

struct PerspectiveGrid {
  Polygon clip;  ///< the panel
  std::optional<RuledLine> horizon;
  std::vector<RuledLine> ground;   ///< squares on the ground
  std::vector<RuledLine> upright;  ///< a measuring wall through the focus, same squares
  std::vector<VanishingPoint> vanishing;
  double squareM = 1;  ///< side of the squares
  double eyeM = 0;     ///< height of the eye over the ground: the horizon cuts everybody there
  double lensMm = 50;  ///< on a frame 36 mm wide
};

}  // namespace tw
