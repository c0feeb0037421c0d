// How busy a page is as a picture: brightness, entropy and number of shapes, after Dunst & Hartel
// (DH 2018 and 2019 abstracts). Told beside the other measures, never judged.
#pragma once

#include "geometry/grey_picture.h"

namespace tw {

struct PageComplexity {
  double brightness = 0;   ///< mean L* / 100
  double entropyBits = 0;  ///< Shannon entropy over 256 greys, 0 … 8
  int shapes = 0;
};

PageComplexity complexityOf(const GreyPicture& page);

}  // namespace tw
