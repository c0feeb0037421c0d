// Sizing a tree of panels
//
// Idea. A panel of weight w should get area in proportion to w. "In proportion" cannot be had
// exactly once gutters and least sizes are asked for, so the page is the solution of
//
//   maximise  Σ w(i)·(log width(i) + log height(i))
//   subject to the tree: in a row widths and gutters add up to the row's width and heights are
//   equal; in a stack the other way round; width(i) ≥ least width, height(i) ≥ least height.
//
// The constraints never mix widths and heights, so this is two problems of one kind. Call nodes
// whose children add up along the axis "sum" nodes (rows across, stacks down) and the others
// "share" nodes (all children as long as the node). The objective is strictly concave, so there is
// one answer.
//
// Closed form. Without gutters and least sizes a node's best value of length L is
// W·log L + constant, W its sum of weights: true on a leaf; a share node adds its children's; a sum
// node splits L in the ratio of the children's W (Lagrange). Hence every cut divides its box
// in the ratio of the weights on its sides and every area is exactly in proportion.
// More weight never gives less area: if x, x' are the best answers for weights that differ only
// in w(i) < w'(i), adding both optimality inequalities gives
// (w'(i) − w(i))·(log area'(i) − log area(i)) ≥ 0.
//
// General case: Newton's method with the tree as elimination order.
// (1) Bottom up: each node's least length (sum: children + gutters, share: the longest), weight W
//     and gutter load (gutters it contains; the mean by weight on a share node).
// (2) If the least lengths do not fit, all are multiplied by the largest factor f that does fit.
//     The needed length is convex, increasing and piecewise linear in f, so Newton from f = 1 ends
//     at the exact root in as many steps as there are kinks.
// (3) Start: every sum node gives child c the length max(least, load + t·W), t by water-filling.
//     For tiers of single panels this is already the answer.
// (4) Repeat: bottom up, every node tells its slope g and curvature q, so that a change d of its
//     length is worth g·d − q·d²/2: leaf g = w/h, q = w/h²; share node: the sums; sum node: best
//     split of d among the children, d(c) = (g(c) − μ)/q(c) but never below the child's least, by
//     water-filling in μ; then g = μ, 1/q = Σ 1/q(c) over those not held. Top down, the root's d
//     is 0 and each sum node splits its own d the same way.
// (5) Step length 1, or so that no leaf changes by more than half: with |x| ≤ ½,
//     log(1 + x) ≥ x − 0.775·x² for x = −½ (and more elsewhere), so along Newton's direction
//     each step gains; near the answer the steps are whole and converge quadratically.
//
// Cost: O(nodes) per iteration, two to six iterations. What it does badly: a least size binds the
// shape of all neighbours in its tier; the artist sees that as the page it is.
// Source: Boyd & Vandenberghe, Convex Optimization (2004), §5.5 (KKT), §9.6 (Newton's method
// for self-concordant functions); the tree elimination is ordinary block elimination. From memory.
#include "arrange/sizing.h"

#include <algorithm>
#include <cmath>
#include <cstdint>

namespace tw {

namespace {

constexpr int kMostIterations = 80;       // safety; six are usual
constexpr double kConverged = 1e-11;      // of the length
constexpr double kLargestStep = 0.5;      // of a leaf's size, see (5)
constexpr double kFloor = 1e-6;           // of the length: keeps a panel without least size open
constexpr double kMostGutterShare = 0.5;  // of the length

/// One solve; arrays are by node and live on the stack.
class AxisProblem {
 public:
  AxisProblem(const FlatTree& tree, int root, const AxisAsk& ask)
      : tree_(tree), root_(root), end_(tree[root].end), ask_(ask), gutter_(ask.gutter) {}

  double gutterLength() { return needed(0).length; }
  double leastLength() { return needed(1).length; }
  void setGutter(double gutter) { gutter_ = gutter; }

  double solve(double length, PerNode& sizes) {
    floor_ = kFloor * length;
    const double factor = fittingFactor(length);
    prepare(factor);
    start(length, sizes);
    for (int i = 0; i < kMostIterations && !improve(length, sizes); ++i) {
    }
    return factor;
  }

 private:
  struct Needed {
    double length = 0, slope = 0;
  };

  bool adds(int node) const { return tree_[node].isRow == (ask_.axis == Axis::Across); }
  double leastOf(int leaf) const { return ask_.least[static_cast<std::size_t>(tree_[leaf].panel)]; }
  double weightOf(int leaf) const {
    return ask_.weights[static_cast<std::size_t>(tree_[leaf].panel)];
  }
  double gutters(int node) const { return (tree_[node].children - 1) * gutter_; }
  static double& at(PerNode& values, int node) { return values[static_cast<std::size_t>(node)]; }

  /// Calls use(child, ordinal) for each child.
  template <class Use>
  void forChildren(int node, Use use) const {
    int child = node + 1;
    for (int i = 0; i < tree_[node].children; ++i, child = tree_[child].end) use(child, i);
  }

  /// Length that the node needs when least sizes are multiplied by `factor`.
  Needed needed(double factor) {
    std::array<Needed, kMostNodes> need;
    for (int node = end_ - 1; node >= root_; --node) {
      Needed& own = need[static_cast<std::size_t>(node)];
      own = {};
      if (tree_[node].panel >= 0) {
        own = {factor * leastOf(node), leastOf(node)};
        continue;
      }
      if (adds(node)) own.length = gutters(node);
      forChildren(node, [&](int c, int) {
        const Needed& child = need[static_cast<std::size_t>(c)];
        if (adds(node))
          own = {own.length + child.length, own.slope + child.slope};
        else if (child.length > own.length)
          own = child;
      });
    }
    return need[static_cast<std::size_t>(root_)];
  }

  /// Step (2).
  double fittingFactor(double length) {
    double factor = 1;
    for (int i = 0; i < kMostIterations; ++i) {
      const Needed need = needed(factor);
      if (need.length <= length * (1 + 1e-12) || need.slope <= 0) return factor;
      factor = std::max(0.0, factor - (need.length - length) / need.slope);
    }
    return factor;
  }

  /// Step (1), with the factor of step (2).
  void prepare(double factor) {
    for (int node = end_ - 1; node >= root_; --node) {
      double &low = at(low_, node), &load = at(load_, node), &weight = at(weight_, node);
      load = 0;
      if (tree_[node].panel >= 0) {
        low = std::max(factor * leastOf(node), floor_);
        weight = weightOf(node);
        continue;
      }
      weight = 0;
      low = load = adds(node) ? gutters(node) : 0;
      forChildren(node, [&](int c, int) {
        weight += at(weight_, c);
        if (adds(node))
          low += at(low_, c), load += at(load_, c);
        else
          low = std::max(low, at(low_, c)), load += at(load_, c) * at(weight_, c);
      });
      if (!adds(node)) load /= weight;
    }
  }

  /// Step (3).
  void start(double length, PerNode& sizes) {
    at(sizes, root_) = length;
    for (int node = root_; node < end_; ++node) {
      if (tree_[node].panel >= 0) continue;
      if (adds(node))
        fill(node, sizes);
      else
        forChildren(node, [&](int c, int) { at(sizes, c) = at(sizes, node); });
    }
  }

  void fill(int node, PerNode& sizes) {
    std::uint64_t held = 0;
    for (bool changed = true; changed;) {
      double room = at(sizes, node) - gutters(node), weight = 0;
      forChildren(node, [&](int c, int i) {
        if (held >> i & 1)
          room -= at(low_, c);
        else
          room -= at(load_, c), weight += at(weight_, c);
      });
      const double t = weight > 0 ? room / weight : 0;
      changed = false;
      forChildren(node, [&](int c, int i) {
        at(sizes, c) = at(low_, c);
        if (held >> i & 1) return;
        const double wanted = at(load_, c) + t * at(weight_, c);
        if (wanted < at(low_, c))
          held |= std::uint64_t{1} << i, changed = true;
        else
          at(sizes, c) = wanted;
      });
    }
  }

  /// One turn of steps (4) and (5); true when the sizes have settled.
  bool improve(double length, PerNode& sizes) {
    for (int node = end_ - 1; node >= root_; --node) model(node, sizes);
    at(change_, root_) = 0;
    double leafStep = 0, largest = 0;
    for (int node = root_; node < end_; ++node) {
      const double d = at(change_, node);
      largest = std::max(largest, std::abs(d));
      if (tree_[node].panel >= 0)
        leafStep = std::max(leafStep, std::abs(d) / at(sizes, node));
      else if (adds(node))
        split(node, d, sizes);
      else
        forChildren(node, [&](int c, int) { at(change_, c) = d; });
    }
    const double step = leafStep > kLargestStep ? kLargestStep / leafStep : 1;
    for (int node = root_; node < end_; ++node) at(sizes, node) += step * at(change_, node);
    return step == 1 && largest <= kConverged * length;
  }

  void model(int node, PerNode& sizes) {
    double &g = at(slope_, node), &q = at(bend_, node);
    if (tree_[node].panel >= 0) {
      g = weightOf(node) / at(sizes, node);
      q = g / at(sizes, node);
    } else if (adds(node)) {
      split(node, 0, sizes);
    } else {
      g = q = 0;
      forChildren(node, [&](int c, int) { g += at(slope_, c), q += at(bend_, c); });
    }
  }

  /// Divides a change d of a sum node among its children and sets the node's slope and bend.
  void split(int node, double d, PerNode& sizes) {
    std::uint64_t held = 0;
    double price = 0, stretch = 0;
    for (bool changed = true; changed;) {
      double room = d, wish = 0;
      stretch = 0;
      forChildren(node, [&](int c, int i) {
        if (held >> i & 1) {
          room -= lowest(c, sizes);
        } else {
          stretch += 1 / at(bend_, c);
          wish += at(slope_, c) / at(bend_, c);
        }
      });
      if (stretch == 0) break;
      price = (wish - room) / stretch;
      changed = false;
      forChildren(node, [&](int c, int i) {
        if (held >> i & 1) return;
        at(change_, c) = (at(slope_, c) - price) / at(bend_, c);
        if (at(change_, c) >= lowest(c, sizes)) return;
        at(change_, c) = lowest(c, sizes);
        held |= std::uint64_t{1} << i;
        changed = true;
      });
    }
    at(slope_, node) = price;
    if (stretch > 0)
      at(bend_, node) = 1 / stretch;
    else
      holdAll(node);
  }

  /// A node with no room at all: its first free bit would go to the child that wants it most.
  void holdAll(int node) {
    at(slope_, node) = 0;
    forChildren(node, [&](int c, int) {
      if (at(slope_, c) <= at(slope_, node)) return;
      at(slope_, node) = at(slope_, c);
      at(bend_, node) = at(bend_, c);
    });
  }

  double lowest(int node, PerNode& sizes) {
    return std::min(0.0, at(low_, node) - at(sizes, node));
  }

  const FlatTree& tree_;
  int root_, end_;
  const AxisAsk& ask_;
  double gutter_;
  double floor_ = 0;
  PerNode low_, load_, weight_, slope_, bend_, change_;
};

}  // namespace

double usedGutter(const FlatTree& tree, int node, const AxisAsk& ask, double length) {
  const double taken = AxisProblem(tree, node, ask).gutterLength();
  const double most = kMostGutterShare * length;
  return taken > most ? ask.gutter * most / taken : ask.gutter;
}

double sizeAxis(const FlatTree& tree, int node, const AxisAsk& ask, double length, PerNode& sizes) {
  AxisProblem problem(tree, node, ask);
  const double taken = problem.gutterLength();
  const bool tooMany = taken > kMostGutterShare * length;
  if (tooMany) problem.setGutter(usedGutter(tree, node, ask, length));
  const double factor = problem.solve(length, sizes);
  return tooMany ? 0 : factor;
}

double leastLength(const FlatTree& tree, const AxisAsk& ask) {
  return AxisProblem(tree, 0, ask).leastLength();
}

}  // namespace tw
