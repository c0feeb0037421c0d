// Copy that the artist placed, as lettering has to take it: where it stands and what its tail does.
// And what there is to say against its place; it is told, never mended.
#pragma once

#include <optional>
#include <vector>

#include "letter/place_copy.h"

namespace tw {

struct HeldBalloon {
  HeldCopy copy;
  PlacedBalloon balloon;
};

/// By item of the request; nothing for those that the program places.
std::vector<std::optional<HeldBalloon>> heldIn(const LetterRequest& request,
                                               const Letterer& letterer);

/// The held balloon's tail beside the others as they were placed now: a bridge to a balloon that
/// moved is drawn again or becomes a tail.
Polygon tailBeside(const HeldBalloon& held, const LetterRequest& request,
                   const std::vector<PlacedBalloon>& placed, const Letterer& letterer);

/// Against the balloon at `index` of `placed`: on a face, outside the live area or its panel, on
/// another balloon, out of its turn, too far from who speaks or thinks.
std::vector<CopyFinding> heldFindings(const std::vector<PlacedBalloon>& placed, std::size_t index,
                                      const LetterRequest& request, const Letterer& letterer);

/// mm² of faces under the balloon.
double faceUnder(const PlacedBalloon& balloon, const std::vector<Polygon>& faces);

}  // namespace tw
