// A tree laid flat for sizing: nodes in preorder, no pointers, no memory of its own on the heap.
// Children come after their parent, so one backward sweep goes bottom up, one forward top down.
#pragma once

#include <array>
#include <cstddef>

#include "arrange/tree.h"

namespace tw {

inline constexpr std::size_t kMostNodes = 2 * kMostLeaves - 1;

struct FlatNode {
  bool isRow = false;
  int panel = -1;    ///< reading order from 0 on a leaf, otherwise −1
  int children = 0;  ///< 0 on a leaf
  int end = 0;       ///< one past the last node below this one; also its next sibling, if any
  int parent = -1;
};

struct FlatTree {
  int count = 0;   ///< nodes
  int panels = 0;  ///< leaves
  std::array<FlatNode, kMostNodes> nodes;

  const FlatNode& operator[](int i) const { return nodes[static_cast<std::size_t>(i)]; }
  FlatNode& operator[](int i) { return nodes[static_cast<std::size_t>(i)]; }
};

FlatTree flatTree(const PackedTree& packed);

/// The same arrangement of panels [first, last) alone: nodes left with one child vanish, and
/// nodes that then repeat their parent's direction are merged into it.
PackedTree restricted(const PackedTree& packed, int first, int last);

}  // namespace tw
