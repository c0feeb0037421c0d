// Enumerating reading trees
//
// Idea. A page cut by straight cuts that run from edge to edge is a tree: the first cuts make
// either tiers (a stack) or columns (a row), each piece is cut the other way, and so on. With
// levels alternating and every inner node having at least two children, each such page is written
// once. An ordered tree over n leaves whose root is a stack is a composition n = m1 + … + mk
// (k ≥ 2) with a tree of the other direction on every part, so
//
//   s(1) = 1,  s(n) = Σ over compositions of Π s(m)            little Schröder, OEIS A001003
//
// and both root directions together give twice that for n ≥ 2: large Schröder, OEIS A006318.
//
// Steps. (1) For sizes 2, 3, … n list the trees whose root is a stack, by appending for each
// composition every choice of smaller trees. (2) A tree and its transpose differ only in the
// direction bit of their inner nodes, so the smaller trees are stored once and turned while
// they are copied.
//
// Packed form, preorder: 0 for a leaf, otherwise the number of children, with 0x80 added on a row.
//
// Cost: output-sensitive, one copy of at most 2n − 1 bytes per tree; 206 098 trees for n = 10.
// Above kExhaustivePanels the list is a beam, see regular_trees.cpp. What it does badly: pages
// that are not made of edge-to-edge cuts (the two pinwheels of five panels and their kin) are left
// out. Counts: OEIS A006318; Ackerman, Barequet, Pinter, SODA 2004, 729–738 for the guillotine
// partitions.
#include "arrange/tree.h"

#include <algorithm>
#include <limits>

#include "arrange/regular_trees.h"
#include "base/result.h"

namespace tw {

namespace {

constexpr unsigned kRowBit = 0x80;

unsigned byteAt(const PackedTree& tree, std::size_t at) {
  ensure(at < tree.size(), "a packed tree ends too early");
  return static_cast<unsigned char>(tree[at]);
}

/// The same tree with stacks and rows exchanged.
PackedTree turned(PackedTree tree) {
  for (char& c : tree)
    if (c != 0) c = static_cast<char>(static_cast<unsigned char>(c) ^ kRowBit);
  return tree;
}

/// Lists all trees by size; see the head of the file.
class Enumeration {
 public:
  explicit Enumeration(Progress& progress) : progress_(progress) {}

  std::vector<PackedTree> stacks(int panels) {
    stacks_ = {{}, {PackedTree(1, '\0')}};
    rows_.assign(1, {});
    for (int n = 2; n <= panels; ++n) {
      turnInto(rows_, stacks_.back());
      open_.assign(1, '\0');
      stacks_.emplace_back();
      addChildren(n, n, 0);
      if (progress_.isStopped()) return {};
      progress_.tell("arrangements", static_cast<double>(n) / panels);
    }
    return std::move(stacks_.back());
  }

 private:
  static void turnInto(std::vector<std::vector<PackedTree>>& rows,
                       const std::vector<PackedTree>& stacks) {
    rows.emplace_back();
    rows.back().reserve(stacks.size());
    for (const PackedTree& tree : stacks) rows.back().push_back(turned(tree));
  }

  /// Appends every forest that fills `left` more leaves to the open stack of `whole` leaves.
  void addChildren(int left, int whole, int children) {
    if (left == 0) {
      open_[0] = static_cast<char>(children);
      stacks_.back().push_back(open_);
      return;
    }
    if (progress_.isStopped()) return;
    const std::size_t length = open_.size();
    for (int size = 1; size <= std::min(left, whole - 1); ++size)
      for (const PackedTree& child : rows_[static_cast<std::size_t>(size)]) {
        open_ += child;
        addChildren(left - size, whole, children + 1);
        open_.resize(length);
      }
  }

  Progress& progress_;
  std::vector<std::vector<PackedTree>> stacks_, rows_;  ///< by number of leaves
  PackedTree open_;
};

std::uint64_t saturatedSum(std::uint64_t a, std::uint64_t b) {
  return a > std::numeric_limits<std::uint64_t>::max() - b
             ? std::numeric_limits<std::uint64_t>::max()
             : a + b;
}

TreeNode nodeAt(const PackedTree& packed, std::size_t& at) {
  const unsigned byte = byteAt(packed, at++);
  TreeNode node;
  node.isRow = (byte & kRowBit) != 0;
  node.children.reserve(byte & ~kRowBit);
  for (unsigned i = 0; i < (byte & ~kRowBit); ++i) node.children.push_back(nodeAt(packed, at));
  return node;
}

void pack(const TreeNode& node, PackedTree& out) {
  const auto children = static_cast<unsigned>(node.children.size());
  ensure(children != 1 && children < kRowBit, "a node has no children or from 2 to 127");
  out += static_cast<char>(children == 0 ? 0 : children | (node.isRow ? kRowBit : 0));
  for (const TreeNode& child : node.children) pack(child, out);
}

void write(const TreeNode& node, int& panel, std::string& out) {
  if (node.isLeaf()) {
    out += std::to_string(++panel);
    return;
  }
  out += node.isRow ? '(' : '[';
  for (std::size_t i = 0; i < node.children.size(); ++i) {
    if (i > 0) out += ' ';
    write(node.children[i], panel, out);
  }
  out += node.isRow ? ')' : ']';
}

}  // namespace

std::uint64_t treeCount(int panels) {
  // Large Schröder numbers: S(n) = S(n−1) + Σ S(k)·S(n−1−k), OEIS A006318, offset by one.
  std::vector<std::uint64_t> s{1};
  for (int n = 1; n < panels; ++n) {
    std::uint64_t sum = s.back();
    for (int k = 0; k < n; ++k) {
      const std::uint64_t a = s[static_cast<std::size_t>(k)];
      const std::uint64_t b = s[static_cast<std::size_t>(n - 1 - k)];
      const bool overflows = a > std::numeric_limits<std::uint64_t>::max() / b;
      sum = saturatedSum(sum, overflows ? std::numeric_limits<std::uint64_t>::max() : a * b);
    }
    s.push_back(sum);
  }
  return s.back();
}

TreeList enumerateTrees(int panels, Progress& progress, std::size_t beam) {
  TreeList list;
  if (panels < 1 || panels > kMostLeaves) return list;
  list.counted = treeCount(panels);
  list.exhaustive = panels <= kExhaustivePanels;
  if (!list.exhaustive) {
    list.trees = regularTrees(panels, beam, progress);
    return list;
  }
  list.trees = Enumeration(progress).stacks(panels);
  if (panels == 1) return list;
  const std::size_t stacks = list.trees.size();
  list.trees.reserve(2 * stacks);
  for (std::size_t i = 0; i < stacks; ++i) list.trees.push_back(turned(list.trees[i]));
  return list;
}

TreeNode treeFrom(const PackedTree& packed) {
  std::size_t at = 0;
  TreeNode tree = nodeAt(packed, at);
  ensure(at == packed.size(), "a packed tree has bytes after its end");
  return tree;
}

PackedTree packed(const TreeNode& tree) {
  PackedTree out;
  pack(tree, out);
  return out;
}

std::string notation(const TreeNode& tree) {
  std::string out;
  int panel = 0;
  write(tree, panel, out);
  return out;
}

}  // namespace tw
