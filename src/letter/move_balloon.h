// What a hand does to one balloon of a panel: moves it, drags its tail's tip, makes it broader or
// narrower, types other words into it. The result is marked as placed by hand, so that lettering
// leaves it alone and places the others around it. The panel and the balloons as they stand come
// as a LetterRequest; no function changes another balloon.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "letter/lettering.h"

namespace tw {

/// The tail that the program would give the balloon where it stands: to the mouth, to the panel's
/// edge, or a bridge to the balloon of the same voice before it.
Polygon tailWhereItStands(const PlacedBalloon& balloon, const LetterRequest& panel,
                          const Letterer& letterer);
/// Does its tail end where the program would have it end?
bool tailIsAimed(const PlacedBalloon& balloon, const LetterRequest& panel,
                 const Letterer& letterer);

/// The tail is aimed anew; one whose tip the artist set keeps its tip.
PlacedBalloon movedBalloon(const PlacedBalloon& balloon, Vector by, const LetterRequest& panel,
                           const Letterer& letterer);

/// A tip inside the balloon takes the tail away.
PlacedBalloon withTailTip(const PlacedBalloon& balloon, Point tip, const LetterRequest& panel,
                          const Letterer& letterer);
/// The program's own tail again.
PlacedBalloon withAimedTail(const PlacedBalloon& balloon, const LetterRequest& panel,
                            const Letterer& letterer);

/// The same words at the same middle in fewer (`step` < 0: broader) or more lines; copy set free
/// larger or smaller. Nothing when the words or the panel do not allow it.
std::optional<PlacedBalloon> reshapedBalloon(const PlacedBalloon& balloon, int step,
                                             const LetterRequest& panel, const Letterer& letterer);

/// The item's words as they are now, set about the same middle in much the same proportions.
PlacedBalloon retypedBalloon(const PlacedBalloon& balloon, const CopyItem& item,
                             const LetterRequest& panel, const Letterer& letterer);

/// The balloons of a panel that changed, those placed by hand taken along: to the same relative
/// place when its outline changed, their tails after the mouths that moved. A balloon for which
/// nothing moved is exactly as it was. The others are left as they stand.
std::vector<PlacedBalloon> takenAlong(const LetterRequest& before, const LetterRequest& after,
                                      const Letterer& letterer);

}  // namespace tw
