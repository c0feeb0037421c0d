// The place a panel shows behind and around its figures, invented from the words of the beat's
// setting: walls, towers, cliffs, a boat, rocks, trees. Simple masses, drawn light; the artist
// draws the real place. What would stand between camera and figures is left away.
#pragma once

#include "stage/blocking.h"

namespace tw {

/// The set as solids; `leftward` mirrors it.
std::vector<Solid> setSolids(const Beat& beat, const CameraPlace& camera, bool leftward,
                             double detail);
/// The figures stand or sit in a boat.
bool isAboard(const Beat& beat);
/// The piece the setting is named for, where it stands when the panel has no figures.
Box3 mainSetBox(const Beat& beat);
/// How far behind the figures' middle the back wall of a room stands.
double roomDepth(const Beat& beat);

}  // namespace tw
