// Every ordered row/column tree over n panels. Leaves in reading order; each inner node has at
// least two children and levels alternate between a stack (children top to bottom) and a row
// (children in reading direction), so a tree is written in one way only. Their number is the
// large Schröder number (OEIS A006318): 1, 2, 6, 22, 90, 394, 1806, 8558, 41586, 206098.
#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "base/progress.h"

namespace tw {

inline constexpr int kExhaustivePanels = 10;  ///< above this a beam of trees is kept
inline constexpr int kMostLeaves = 40;        ///< above this there are no trees at all

struct TreeNode {
  bool isRow = false;              ///< row: side by side; otherwise a stack. Unused on leaves.
  std::vector<TreeNode> children;  ///< empty on a leaf
  bool isLeaf() const { return children.empty(); }
};

/// A tree in little memory: one byte per leaf and node, preorder. Decode with `treeFrom`.
using PackedTree = std::string;

struct TreeList {
  std::vector<PackedTree> trees;  ///< fixed order
  std::uint64_t counted = 0;      ///< how many exist for n
  bool exhaustive = true;         ///< false: a beam of the most regular ones
};

/// How many trees there are; the largest 64-bit number when they are more than that.
std::uint64_t treeCount(int panels);

/// All trees over `panels` leaves, or a stated beam of `beam` trees above kExhaustivePanels.
/// No trees below 1 or above kMostLeaves. Fewer trees than promised only when stopped.
TreeList enumerateTrees(int panels, Progress& progress, std::size_t beam = 200'000);

TreeNode treeFrom(const PackedTree& packed);
PackedTree packed(const TreeNode& tree);
/// Our notation: panels by number, rows in ( ), stacks in [ ]: "[1 (2 3) 4]".
std::string notation(const TreeNode& tree);

}  // namespace tw
