// Where the order numbers of a page stand: inside their panel near the corner where reading
// enters, on no copy and no head; on the border where the corner is full.
#pragma once

#include "press/proof.h"
#include "press/typesetter.h"

namespace tw {

/// Outlines of all that is lettered in the panel, tails and free letters too.
std::vector<Polygon> copyShapes(const RoughPanel& panel, const Typesetter& typesetter);

/// One place per panel for a round number of that radius, none on another.
std::vector<Point> numberPlaces(const RoughPicture& picture, const Typesetter& typesetter,
                                double radius);

}  // namespace tw
