// The most regular reading trees of a page with too many panels to list them all. Up to ten
// panels tree.h lists every tree; beyond that only nearly even tiers are easy to read.
#pragma once

#include <cstddef>
#include <vector>

#include "arrange/tree.h"

namespace tw {

/// The `most` trees of least irregularity, most regular first; see regular_trees.cpp.
std::vector<PackedTree> regularTrees(int panels, std::size_t most, Progress& progress);

}  // namespace tw
