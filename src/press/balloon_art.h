// Draws placed copy: balloons with their tails, thought clouds, caption boxes, sound effects and
// titles. Where they stand and how they break is lettering's choice, not made here.
#pragma once

#include "job/rough.h"
#include "press/surface.h"
#include "press/typesetter.h"

namespace tw {

/// What surrounds the type; sound effects are wholly drawn here, as open letters. Balloons of one
/// panel that a bridge joins get one outline together.
void drawBalloonShapes(Surface& surface, const std::vector<PlacedBalloon>& balloons,
                       const Typesetter& typesetter);
/// The type itself; stressed words are bold italic.
void drawBalloonType(Surface& surface, const PlacedBalloon& balloon, const Typesetter& typesetter);

/// A thought's outline where lettering gave only a plain convex one: scallops around it.
Region cloudAround(const Polygon& outline);

}  // namespace tw
