// Picks roughs that are good and unlike each other.
#pragma once

#include <vector>

#include "review/score_card.h"

namespace tw {

/// 0 the same page … 1 wholly unlike: shapes count for most, then how panels are staged.
double unlikeness(const Measured& a, const Measured& b, const Sheet& sheet);

/// The same of a page that is only planned: a layout and choices.
double unlikeness(const Layout& layout, const std::vector<StagingChoice>& choices,
                  const Measured& other, const Sheet& sheet);

/// True when both have one tree, whatever the treatment made of it, or draw much the same page by
/// two.
bool sharesArrangement(const Layout& a, const Layout& b, const Sheet& sheet);

/// True when both show the same panels, to half a millimetre, staged and posed the same.
bool isSamePage(const Measured& a, const Measured& b);

/// Indices into `roughs`, the best first, then each time the one whose score less
/// `spread` × its unlikeness to those chosen is least. Ties go to the lower index. `unlike` count
/// as chosen before the first.
std::vector<std::size_t> chooseDifferent(const std::vector<Measured>& roughs, const Sheet& sheet,
                                         std::size_t keep, double spread,
                                         const std::vector<Measured>& unlike = {});

}  // namespace tw
