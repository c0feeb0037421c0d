// Reads an arrangement back from our notation, as roughs and pins keep it.
#pragma once

#include <optional>
#include <string_view>

#include "arrange/tree.h"

namespace tw {

/// "[1 (2 3) 4]" as a tree, or nothing when it is not written as notation() writes it: panels
/// numbered in order from 1, rows and stacks taking turns, at most kMostLeaves panels.
std::optional<TreeNode> treeNoted(std::string_view notation);

/// How many panels the tree has.
int leavesOf(const TreeNode& tree);

}  // namespace tw
