// The most regular trees first
//
// Idea. Above ten panels there are millions of trees, nearly all of them crooked. A page of so
// many panels is read easily only when it is close to even tiers, so trees are listed in order
// of their irregularity, a whole number that adds up over the tree:
//
//   irregularity = Σ over inner nodes of
//       Σ |m(i) − m(i+1)|     leaves of neighbouring children that differ,
//     + number of children that are cut again (few tiers, little nesting),
//     + 3 for each child beyond the fourth (long chains of slivers).
//
// The weights 1, 1, 3 are our own choice, no source.
//
// Steps. (1) treeExists(n, c) and childrenExist(…) answer by memo whether any tree of n leaves
// costs exactly c. (2) For c = 0, 1, 2, … walk depth-first only into branches that exist, and
// write each tree as it is completed, stacks before rows. (3) Stop at the asked number.
//
// Cost: the memo has about n²·5·kMostIrregular entries; then time is in proportion to the bytes
// written. What it does badly: the last irregularity class is cut off in the middle, in favour
// of trees whose first child is small.
#include "arrange/regular_trees.h"

#include <algorithm>
#include <cstdlib>
#include <functional>

namespace tw {

namespace {

constexpr int kMostIrregular = 64;   // any beam is full long before
constexpr int kEasyChildren = 4;     // a tier of more starts to look like a film strip
constexpr int kPenaltyPerChild = 3;  // for each child beyond them
constexpr unsigned kRowBit = 0x80;   // as in tree.cpp

/// What has been chosen of a node's children so far.
struct Chain {
  int left = 0;      ///< leaves still to be given out
  int previous = 0;  ///< leaves of the child before, 0 when there is none
  int children = 0;
  int cost = 0;  ///< irregularity still to be spent
};

int stepCost(const Chain& chain, int size) {
  const int uneven = chain.previous > 0 ? std::abs(size - chain.previous) : 0;
  const int crowd = chain.children >= kEasyChildren ? kPenaltyPerChild : 0;
  return uneven + crowd + (size > 1 ? 1 : 0);
}

class RegularTrees {
 public:
  RegularTrees(int panels, std::size_t most, Progress& progress)
      : panels_(panels), most_(most), progress_(progress) {
    memo_.assign(index({panels, panels, kEasyChildren, kMostIrregular}) + 1, kUnknown);
  }

  std::vector<PackedTree> list() {
    for (int cost = 0; cost <= kMostIrregular && !isDone(); ++cost)
      for (const bool isRow : {false, true})
        if (treeExists(panels_, cost)) writeTree(panels_, cost, isRow, [this] { keep(); });
    return std::move(trees_);
  }

 private:
  using Then = std::function<void()>;
  static constexpr signed char kUnknown = -1;

  bool isDone() const { return trees_.size() >= most_ || progress_.isStopped(); }

  void keep() {
    if (!isDone()) trees_.push_back(open_);
  }

  std::size_t index(const Chain& c) const {
    const int children = std::min(c.children, kEasyChildren);
    return static_cast<std::size_t>(
        ((c.left * (panels_ + 1) + c.previous) * (kEasyChildren + 1) + children) *
            (kMostIrregular + 1) +
        c.cost);
  }

  bool treeExists(int size, int cost) {
    return size == 1 ? cost == 0 : childrenExist({size, 0, 0, cost});
  }

  bool childrenExist(const Chain& chain) {
    if (chain.left == 0) return chain.cost == 0;
    signed char& known = memo_[index(chain)];
    if (known != kUnknown) return known != 0;
    bool found = false;
    forEachChild(
        chain, [&](int, int, const Chain&) { found = true; }, [&] { return found; });
    known = found ? 1 : 0;
    return found;
  }

  /// Calls use(size, cost of the child, rest) for each next child that can be completed.
  template <class Use, class Stop>
  void forEachChild(const Chain& chain, Use use, Stop stop) {
    const int largest = chain.children == 0 ? chain.left - 1 : chain.left;
    for (int size = 1; size <= largest; ++size) {
      const int budget = chain.cost - stepCost(chain, size);
      for (int own = 0; own <= budget; ++own) {
        if (stop()) return;
        const Chain rest{chain.left - size, size, chain.children + 1, budget - own};
        if (treeExists(size, own) && childrenExist(rest)) use(size, own, rest);
      }
    }
  }

  void writeTree(int size, int cost, bool isRow, const Then& then) {
    const std::size_t at = open_.size();
    open_ += '\0';
    if (size == 1)
      then();
    else
      writeChildren({size, 0, 0, cost}, isRow, at, then);
    open_.resize(at);
  }

  void writeChildren(const Chain& chain, bool isRow, std::size_t node, const Then& then) {
    if (chain.left == 0) {
      open_[node] =
          static_cast<char>(static_cast<unsigned>(chain.children) | (isRow ? kRowBit : 0));
      then();
      return;
    }
    forEachChild(
        chain,
        [&](int size, int own, const Chain& rest) {
          writeTree(size, own, !isRow, [&] { writeChildren(rest, isRow, node, then); });
        },
        [this] { return isDone(); });
  }

  int panels_;
  std::size_t most_;
  Progress& progress_;
  std::vector<signed char> memo_;
  PackedTree open_;
  std::vector<PackedTree> trees_;
};

}  // namespace

std::vector<PackedTree> regularTrees(int panels, std::size_t most, Progress& progress) {
  return RegularTrees(panels, most, progress).list();
}

}  // namespace tw
