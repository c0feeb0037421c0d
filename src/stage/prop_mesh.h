// The mesh of a prop where it stands or is held: a known thing's own shape, else the body that
// Prop::shape names.
#pragma once

#include "stage/blocking.h"
#include "stage/building_shapes.h"

namespace tw {

/// The prop as it stands or is held.
Mesh propMesh(const Prop& prop, const SetProp& set, bool inHand, double detail);
/// The opening that somebody passes through, as large as a body needs, at the height it is at.
Opening passageOpening(const Beat& beat, const Prop& prop, double bodyFloor);
/// The beat's prop; what somebody passes through becomes a wall with an opening around them, who
/// swims or stands at `bodyFloor`. `model`, when there is one, is drawn in place of a plain body.
Mesh propMesh(const Beat& beat, std::size_t index, const SetProp& set, double bodyFloor,
              const Mesh* model, double detail);

}  // namespace tw
