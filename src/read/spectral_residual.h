// What stands out in a picture by its spectrum alone: the spectral residual of Hou & Zhang 2007
// (doi:10.1109/CVPR.2007.383267). It knows nothing of faces or letters; a regular tone or hatch is
// suppressed, the odd thing in it is not.
#pragma once

#include "geometry/grey_picture.h"
#include "read/place_map.h"

namespace tw {

/// The published width of the shrunken picture, px; its height keeps the aspect.
inline constexpr int kSpectralWidth = 64;

/// 0 … 1 over the picture, 1 where it stands out most; all 0 when nothing does.
PlaceMap spectralResidual(const GreyPicture& picture);

}  // namespace tw
