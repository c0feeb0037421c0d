// How much each place of a picture differs in light from what surrounds it, at one scale: what is
// left to the eye when a page is small, blurred and grey.
#pragma once

#include "geometry/grey_picture.h"
#include "read/place_map.h"

namespace tw {

/// Light near the place less light around it, −1 … 1, each a Gaussian mean; one cell a pixel.
PlaceMap contrastMap(const GreyPicture& picture, double centreMm, double surroundMm);

/// A place that stands out from its neighbourhood.
struct Peak {
  Point at;
  double strength = 0;   ///< 0 … 1
  bool lighter = false;  ///< than what is around it
};

/// The strongest first, lighter or darker; none below `least` times the best, no two nearer than
/// `apartMm`. Within `skirtMm` of a much stronger one a weak peak the other way is only that one's
/// skirt, and left out.
std::vector<Peak> peaksOf(const PlaceMap& map, double least, double apartMm, double skirtMm = 0);

}  // namespace tw
