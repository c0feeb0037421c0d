// What a camera usually does for a shot: lens, height of the eye, how much of a body it holds.
// Common practice, no source; an artist's own lens outranks the table.
#pragma once

#include "job/words.h"
#include "stage/volumes.h"

namespace tw {

/// mm on a frame 36 mm wide, for a still frame of 36 × 24.
double usualLens(ShotSize shot, EyeHeight eye);
/// Factor on the usual lens for a frame of that width / height. Tall panels keep the distance to
/// the figure, so the lens grows with the frame's height; in wide ones the middle way between
/// height and width keeps the ends from stretching.
double lensStretch(double aspect);

/// How far the eye stands above (> 0) or below the aim point, seen from there.
double elevationDeg(EyeHeight eye, ShotSize shot);

/// The shot shows figures from crown to sole.
bool isWholeShot(ShotSize shot);
/// The shot holds this level of a body.
bool holdsLevel(ShotSize shot, Level level);

}  // namespace tw
