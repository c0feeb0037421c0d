// A staged page as one picture in greys, as at arm's length: panels in their own values, gutters
// and balloons as paper, lines of type as the light grey that type is from afar.
#pragma once

#include <vector>

#include "geometry/grey_picture.h"
#include "job/rough.h"

namespace tw {

/// `panels`: the greys of each of the rough's panels, without balloons. `width` px over the trim.
GreyPicture pageGrey(const Rough& rough, const std::vector<GreyPicture>& panels, const Rect& trim,
                     int width = 168);

}  // namespace tw
