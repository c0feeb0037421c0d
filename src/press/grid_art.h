// The perspective of each panel over the rough, in the light blue that a scanner drops: horizon,
// squares on the ground, a measuring wall, vanishing points with how far off the panel they lie.
#pragma once

#include "press/proof.h"
#include "press/surface.h"
#include "press/typesetter.h"

namespace tw {

/// Common practice: a light cyan-blue that disappears in a black-only scan.
inline constexpr Ink kNonPhotoBlue{0.40, 0.72, 0.90};

void drawGrids(Surface& surface, const RoughPicture& picture, const Typesetter& typesetter);

}  // namespace tw
