// Which staged layouts are worth drawing.
#pragma once

#include <vector>

#include "compose/layout_search.h"
#include "compose/layout_staging.h"

namespace tw {

/// Roughs that are there already and from which new ones are to differ.
struct ToBeUnlike {
  const Sheet* sheet = nullptr;
  double spread = 0;  ///< cost that being wholly unlike is worth
  const std::vector<Measured>* roughs = nullptr;
};

/// The cheapest, less what being unlike those there is worth; no treatment more than half of them,
/// so that there is something unlike to choose from, unless there is only one.
std::vector<StagedLayout> shortlist(const std::vector<StagedLayout>& staged,
                                    const LayoutSearch& search, std::size_t most,
                                    const ToBeUnlike& unlike);

}  // namespace tw
