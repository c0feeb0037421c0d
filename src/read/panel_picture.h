// One panel cut out of the picture of its page, averaged down to a working size. What lies outside
// the panel's outline, and the border line itself, is masked.
#pragma once

#include <cstdint>
#include <vector>

#include "geometry/grey_picture.h"

namespace tw {

/// Longer side of the working picture, px. Enough for a balloon's letters to be marks and for a
/// pair of eyes; our choice.
inline constexpr int kPanelPictureSide = 256;
/// The masked rim, as a share of the longer side: a border line and the slack of its marking.
inline constexpr double kPanelRim = 0.012;

struct PanelPicture {
  GreyPicture picture;               ///< over the outline's box; masked places continue the rest
  std::vector<std::uint8_t> inside;  ///< 255 inside, 0 masked, row by row
  int insidePixels = 0;

  bool empty() const { return insidePixels == 0; }
};

/// Empty when the outline lies outside the picture or covers too little of it to be looked at.
PanelPicture panelPictureOf(const GreyPicture& page, const Polygon& outline,
                            int longerSide = kPanelPictureSide);

/// Every masked pixel takes the light of the nearest one inside; nothing happens when there is
/// none.
void continueOutward(GreyPicture& picture, const std::vector<std::uint8_t>& inside);

}  // namespace tw
