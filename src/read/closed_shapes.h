// How much each place of a panel lies inside closed shapes: regions of light or dark that stand
// free on their ground. Readers of line drawings look into closed regions (Yang, Jiang, Zhan, Li,
// arXiv 1912.09581, abstract); the reckoning is by Boolean maps.
#pragma once

#include "read/panel_picture.h"
#include "read/place_map.h"

namespace tw {

/// 0 … 1 over the panel's picture; all 0 when nothing is closed.
PlaceMap closedShapes(const PanelPicture& panel);

}  // namespace tw
