// What a panel really shows, counted on a rendered picture of it. Slower than quick_measures.h and
// exact up to the picture's pixels; for the survivors of a search and for hand-made changes.
#pragma once

#include "stage/blocking.h"
#include "stage/light.h"

namespace tw {

/// A figure held by props and hair-thin overlaps is still lifted off in one piece.
inline constexpr double kLiftableVisible = 0.97;

/// Fills figures, tangents, focus and lead of the panel. `solids` are the staging's, figure i at
/// index i.
void lookExactly(RoughPanel& panel, const Beat& beat, const Scene& scene,
                 const std::vector<Solid>& solids, const Lighting& light, int width, LookFor what);

}  // namespace tw
