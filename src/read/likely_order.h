// The order that more readers take than any other, as a whole.
#pragma once

#include <vector>

#include "read/panel_relations.h"

namespace tw {

struct LikelyOrder {
  std::vector<int> order;  ///< indices of the panels
  double share = 0;        ///< of readers who take the whole of it
};

LikelyOrder likelyOrder(const PanelRelations& page);

}  // namespace tw
