// Where the marks of findings stand: inside the panel that they speak of and off its border, close
// to the place that was found, rather on no copy, no head and no other mark.
#pragma once

#include <vector>

#include "job/finding.h"
#include "press/proof.h"
#include "press/typesetter.h"

namespace tw {

/// What one panel offers to marks, in mm of the sheet they are drawn on.
struct MarkRoom {
  Polygon outline;             ///< they stay within it
  std::vector<Polygon> shut;   ///< never on these: insets
  std::vector<Polygon> clear;  ///< rather not on these: copy, heads
  std::vector<Point> taken;    ///< middles of marks and numbers that stand there already
};

/// The middle of a mark as near to the wished place as the room allows; the wish itself where it
/// is good. A panel too small for a mark takes it in its middle.
Point markPlace(const MarkRoom& room, Point wished);

/// Middle of each finding's mark on the page; findings on the page as a whole have none.
struct PlacedMark {
  std::size_t finding = 0;  ///< index
  Point at;
};
std::vector<PlacedMark> findingPlaces(const RoughPicture& picture,
                                      const std::vector<Finding>& findings,
                                      const Typesetter& typesetter);

}  // namespace tw
