// The squint test of one panel: small, blurred and grey, is the focus still the strongest place?
// Takes any picture of the panel, staged, drawn or scanned, and the place of the focus.
#pragma once

#include "geometry/grey_picture.h"

namespace tw {

struct Squint {
  double strength = 0;   ///< of the focus: contrast between centre and surround, 0 … 1
  double elsewhere = 0;  ///< of the strongest place that is not the focus
  Point elsewhereAt;     ///< mm on the page
  int rank = 1;          ///< of the focus among all places that stand out; 1 = the strongest
  double holds = 0;      ///< strength / (strength + elsewhere), 0 … 1; over 0.5 the focus holds
  double contrast = 0;   ///< light of the focus less that of its ground, −1 … 1 (L* / 100)
  bool seen = false;     ///< the focus lies in the panel's picture at all
};

/// `page` may show more than the panel. Nothing is seen of a focus outside the panel: rank counts
/// then behind all others. `copy`: balloons and captions, which are read on their own account and
/// do not count as rivals of the focus.
Squint squintAt(const GreyPicture& page, const Polygon& outline, const Region& focus,
                const std::vector<Rect>& copy = {});
Squint squintAt(const GreyPicture& page, const Polygon& outline, const Rect& focus,
                const std::vector<Rect>& copy = {});

}  // namespace tw
