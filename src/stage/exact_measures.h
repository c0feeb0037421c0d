// What a panel really shows, counted on a rendered picture of it. Slower than quick_measures.h and
// exact up to the picture's pixels; for the survivors of a search and for hand-made changes.
#pragma once

#include "stage/blocking.h"
#include "stage/picture.h"

namespace tw {

/// Fills figures, focus and lead of the panel. `solids` are the staging's, figure i at index i.
void lookExactly(RoughPanel& panel, const Beat& beat, const Scene& scene,
                 const std::vector<Solid>& solids, int width);

}  // namespace tw
