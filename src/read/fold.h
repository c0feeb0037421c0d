// Faces and copy that a spread loses in its fold: what of them lies in the band about the middle
// that the binding swallows. Common practice, no source: keep both out of it. The band is as wide
// as the sheet's inner margins say (Sheet::foldRect).
#pragma once

#include <string>
#include <vector>

#include "geometry/shapes.h"
#include "job/rough.h"

namespace tw {

struct InFold {
  std::size_t panel = 0;  ///< index in the rough
  bool isFace = false;    ///< else copy
  std::string name;       ///< character or copy id
  double share = 0;       ///< of its area that lies in the band
  Polygon place;          ///< mm on the page
};

/// Faces and balloons of which more than `least` lies in the band, in the rough's order. Letters
/// set free (sound effects, titles) may cross a fold and are not counted.
std::vector<InFold> lostInFold(const std::vector<RoughPanel>& panels, const Rect& band,
                               double least = 0.02);

}  // namespace tw
