#include "arrange/flat_tree.h"

#include "base/result.h"

namespace tw {

namespace {

constexpr unsigned kRowBit = 0x80;  // as in tree.cpp

void addNode(const PackedTree& packed, std::size_t& at, int parent, FlatTree& flat) {
  ensure(at < packed.size() && static_cast<std::size_t>(flat.count) < kMostNodes,
         "a packed tree is whole and has at most kMostLeaves leaves");
  const unsigned byte = static_cast<unsigned char>(packed[at++]);
  const int self = flat.count++;
  FlatNode& node = flat[self];
  node = {};
  node.parent = parent;
  node.children = static_cast<int>(byte & ~kRowBit);
  node.isRow = (byte & kRowBit) != 0;
  if (node.children == 0) node.panel = flat.panels++;
  for (int i = 0; i < node.children; ++i) addNode(packed, at, self, flat);
  flat[self].end = flat.count;
}

/// The children that are left of a node; a node itself counts as a leaf when it has none.
std::vector<TreeNode> survivors(const TreeNode& node, int first, int last, int& panel) {
  if (node.isLeaf()) {
    const bool kept = panel >= first && panel < last;
    ++panel;
    return kept ? std::vector<TreeNode>{TreeNode{}} : std::vector<TreeNode>{};
  }
  TreeNode left{node.isRow, {}};
  for (const TreeNode& child : node.children)
    for (TreeNode& kept : survivors(child, first, last, panel)) {
      if (!kept.isLeaf() && kept.isRow == node.isRow)
        for (TreeNode& inner : kept.children) left.children.push_back(std::move(inner));
      else
        left.children.push_back(std::move(kept));
    }
  if (left.children.size() <= 1) return left.children;
  return {std::move(left)};
}

}  // namespace

FlatTree flatTree(const PackedTree& packed) {
  FlatTree flat;
  std::size_t at = 0;
  addNode(packed, at, -1, flat);
  ensure(at == packed.size(), "a packed tree has bytes after its end");
  return flat;
}

PackedTree restricted(const PackedTree& packedTree, int first, int last) {
  int panel = 0;
  std::vector<TreeNode> left = survivors(treeFrom(packedTree), first, last, panel);
  ensure(left.size() == 1, "a restricted tree keeps at least one panel");
  return packed(left.front());
}

}  // namespace tw
