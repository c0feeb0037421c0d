// The search behind fits in regions that are not convex: figure pieces are to be kept out of
// obstacles, all convex, under linear limits that hold anyway.
#pragma once

#include <optional>
#include <vector>

#include "geometry/fit_program.h"
#include "geometry/shapes.h"

namespace tw {

struct FitSpace {
  std::vector<FitLimit> limits;    ///< of the region's hull and the flush side
  std::vector<Polygon> pieces;     ///< of the figure at scale 1, positive turn
  std::vector<Polygon> obstacles;  ///< positive turn
};

struct FoundFit {
  std::optional<ScaleAndMove> best;
  double most = 0;  ///< nothing larger exists; equals best->s when the search was finished
};

/// `atLeast`: a scale known to be possible; only what is larger is looked for.
FoundFit searchFit(const FitSpace& space, double atLeast, int mostSteps);

}  // namespace tw
