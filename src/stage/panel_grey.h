// A staged panel as greys: costume, hair and set in their own values, in the panel's light. What
// squint tests look at.
#pragma once

#include "geometry/grey_picture.h"
#include "stage/light.h"
#include "stage/staging.h"

namespace tw {

/// `width` px over the panel's bounding box; pixels outside the panel's outline are paper.
GreyPicture greyOf(const Stager& stager, const RoughPanel& panel, const Beat& beat,
                   const LightWords& lights, int width = 120);

}  // namespace tw
