// Draws placed copy: balloons with their tails, thought clouds, caption boxes, sound effects and
// titles. Where they stand and how they break is lettering's choice, not made here.
#pragma once

#include "job/rough.h"
#include "press/surface.h"
#include "press/typesetter.h"

namespace tw {

/// What surrounds the type; sound effects are wholly drawn here, as open letters.
void drawBalloonShape(Surface& surface, const PlacedBalloon& balloon, const Typesetter& typesetter);
/// The type itself.
void drawBalloonType(Surface& surface, const PlacedBalloon& balloon);

/// The outline of a thought: scallops around the given outline.
Region cloudAround(const Polygon& outline);

}  // namespace tw
