#include "arrange/sizing.h"

#include <doctest/doctest.h>
#include <rapidcheck.h>

#include <algorithm>
#include <cmath>
#include <functional>

#include "arrange/layout.h"
#include "base/random.h"

namespace tw {
namespace {

constexpr Rect kSpace{{10, 20}, {160, 250}};

const std::vector<PackedTree>& treesOf(int panels) {
  static const auto lists = [] {
    std::vector<std::vector<PackedTree>> all(8);
    Progress progress;
    for (int n = 1; n < 8; ++n)
      all[static_cast<std::size_t>(n)] = enumerateTrees(n, progress).trees;
    return all;
  }();
  return lists[static_cast<std::size_t>(panels)];
}

/// A page to size, drawn from a seed.
struct Case {
  TreeNode tree;
  std::vector<PanelWish> wishes;
  double across = 0, down = 0;
};

Case randomCase(std::uint64_t seed, bool withLeast) {
  Random random(seed);
  Case c;
  const int n = 2 + static_cast<int>(random.next() % 6);
  const auto& trees = treesOf(n);
  c.tree = treeFrom(trees[random.next() % trees.size()]);
  for (int i = 0; i < n; ++i) {
    PanelWish wish{0.3 + 4 * random.uniform() * random.uniform(), 0, 0, 0};
    // Seven panels of 18 mm with six gutters of 4 mm fit in 150 mm.
    if (withLeast)
      wish.leastWidth = 18 * random.uniform(), wish.leastHeight = 18 * random.uniform();
    c.wishes.push_back(wish);
  }
  c.across = 4 * random.uniform();
  c.down = 4 * random.uniform();
  return c;
}

std::vector<Rect> sized(const Case& c) {
  return sizeTree(c.tree, kSpace, c.wishes, c.across, c.down, ReadingDirection::LeftToRight);
}

/// Closed form for no gutters and no least sizes: every cut in the ratio of the weights.
void closedForm(const TreeNode& node, const Rect& box, const std::vector<PanelWish>& wishes,
                std::size_t& panel, std::vector<Rect>& out) {
  if (node.isLeaf()) {
    out.push_back(box);
    ++panel;
    return;
  }
  const std::function<double(const TreeNode&, std::size_t&)> weigh = [&](const TreeNode& n,
                                                                         std::size_t& at) {
    if (n.isLeaf()) return wishes[at++].weight;
    double sum = 0;
    for (const TreeNode& child : n.children) sum += weigh(child, at);
    return sum;
  };
  std::size_t scan = panel;
  const double all = weigh(node, scan);
  scan = panel;
  double done = 0;
  for (const TreeNode& child : node.children) {
    const double from = done / all;
    done += weigh(child, scan);
    const double to = done / all;
    Rect part = box;
    if (node.isRow) {
      part.min.x = box.min.x + from * box.width();
      part.max.x = box.min.x + to * box.width();
    } else {
      part.min.y = box.min.y + from * box.height();
      part.max.y = box.min.y + to * box.height();
    }
    closedForm(child, part, wishes, panel, out);
  }
}

TEST_CASE("without gutters and least sizes every cut is in the ratio of the weights") {
  // Closed form of the Lagrange conditions; see the head of sizing.cpp.
  CHECK(rc::check("closed form", [](std::uint64_t seed) {
    Case c = randomCase(seed, false);
    c.across = c.down = 0;
    std::vector<Rect> expected;
    std::size_t panel = 0;
    closedForm(c.tree, kSpace, c.wishes, panel, expected);
    const std::vector<Rect> boxes = sized(c);
    double weights = 0;
    for (const PanelWish& wish : c.wishes) weights += wish.weight;
    for (std::size_t i = 0; i < boxes.size(); ++i) {
      RC_ASSERT((boxes[i].min - expected[i].min).length() < 1e-7);
      RC_ASSERT((boxes[i].max - expected[i].max).length() < 1e-7);
      RC_ASSERT(std::abs(boxes[i].area() / kSpace.area() - c.wishes[i].weight / weights) < 1e-9);
    }
  }));
}

TEST_CASE("one tier of single panels shares what the gutters leave") {
  const TreeNode leaf;
  const TreeNode tier{true, {leaf, leaf, leaf}};
  const auto boxes = sizeTree(tier, {{0, 0}, {108, 50}}, {{1, 0, 0, 0}, {2, 0, 0, 0}, {1, 0, 0, 0}},
                              4, 9, ReadingDirection::LeftToRight);
  CHECK(boxes[0] == Rect{{0, 0}, {25, 50}});
  CHECK(boxes[1] == Rect{{29, 0}, {79, 50}});
  CHECK(boxes[2] == Rect{{83, 0}, {108, 50}});
}

TEST_CASE("a panel below its least width gets that and the others share the rest") {
  const TreeNode leaf;
  const TreeNode tier{true, {leaf, leaf, leaf}};
  const auto boxes =
      sizeTree(tier, {{0, 0}, {108, 50}}, {{1, 40, 0, 0}, {2, 0, 0, 0}, {1, 0, 0, 0}}, 4, 9,
               ReadingDirection::LeftToRight);
  CHECK(boxes[0].width() == doctest::Approx(40));
  CHECK(boxes[1].width() == doctest::Approx(40));
  CHECK(boxes[2].width() == doctest::Approx(20));
}

TEST_CASE("least sizes that do not fit shrink in proportion") {
  const TreeNode leaf;
  const TreeNode tier{true, {leaf, leaf}};
  const auto boxes = sizeTree(tier, {{0, 0}, {94, 50}}, {{1, 60, 0, 0}, {9, 120, 0, 0}}, 4, 4,
                              ReadingDirection::LeftToRight);
  CHECK(boxes[0].width() == doctest::Approx(30));
  CHECK(boxes[1].width() == doctest::Approx(60));
}

TEST_CASE("gutters too many for the space leave half of it to the panels") {
  TreeNode tier{true, std::vector<TreeNode>(12)};
  const auto boxes = sizeTree(tier, {{0, 0}, {40, 50}}, std::vector<PanelWish>(12, {1, 5, 5, 0}), 8,
                              8, ReadingDirection::LeftToRight);
  for (const Rect& box : boxes) CHECK(box.width() == doctest::Approx(20.0 / 12));
  CHECK(boxes.back().max.x == doctest::Approx(40));
}

/// Lengths along one axis, node for node, for the brute-force judge.
class Nudge {
 public:
  Nudge(const Case& c, const std::vector<Rect>& boxes, Axis axis, Random& random)
      : boxes_(boxes), axis_(axis), random_(random) {
    step_ = 1e-4 * (0.2 + random.uniform());
    visit(c.tree, 0);
  }

  /// Panel lengths after the nudge.
  const std::vector<double>& lengths() const { return lengths_; }

 private:
  void visit(const TreeNode& node, double by) {
    if (node.isLeaf()) {
      const Rect& box = boxes_[lengths_.size()];
      lengths_.push_back((axis_ == Axis::Across ? box.width() : box.height()) + by);
      return;
    }
    const bool adds = node.isRow == (axis_ == Axis::Across);
    std::vector<double> changes(node.children.size(), adds ? 0 : by);
    if (adds) {
      // The node's own change goes to one child, and one child gives to another.
      changes[random_.next() % changes.size()] += by;
      const std::size_t from = random_.next() % changes.size();
      const std::size_t to = random_.next() % changes.size();
      changes[from] -= step_;
      changes[to] += step_;
    }
    for (std::size_t i = 0; i < changes.size(); ++i) visit(node.children[i], changes[i]);
  }

  const std::vector<Rect>& boxes_;
  Axis axis_;
  Random& random_;
  double step_ = 0;
  std::vector<double> lengths_;
};

double worthOf(const Case& c, const std::vector<double>& lengths) {
  double sum = 0;
  for (std::size_t i = 0; i < lengths.size(); ++i) sum += c.wishes[i].weight * std::log(lengths[i]);
  return sum;
}

bool keepsLeast(const Case& c, const std::vector<double>& lengths, Axis axis) {
  for (std::size_t i = 0; i < lengths.size(); ++i)
    if (lengths[i] < (axis == Axis::Across ? c.wishes[i].leastWidth : c.wishes[i].leastHeight))
      return false;
  return true;
}

TEST_CASE("no small lawful move improves a sized page") {
  // Independent judge: the objective is concave and the lawful pages form a convex set, so a page
  // that no small move betters is the best (Boyd & Vandenberghe 2004, §4.2.2, from memory).
  int tried = 0;
  CHECK(rc::check("no better neighbour", [&](std::uint64_t seed) {
    const Case c = randomCase(seed, true);
    const std::vector<Rect> boxes = sized(c);
    Random random(seed + 1);
    for (const Axis axis : {Axis::Across, Axis::Down}) {
      std::vector<double> now;
      for (const Rect& box : boxes)
        now.push_back(axis == Axis::Across ? box.width() : box.height());
      for (int i = 0; i < 60; ++i) {
        const std::vector<double> next = Nudge(c, boxes, axis, random).lengths();
        if (!keepsLeast(c, next, axis)) continue;
        ++tried;
        RC_ASSERT(worthOf(c, next) <= worthOf(c, now) + 1e-12);
      }
    }
  }));
  CHECK(tried > 5000);
}

TEST_CASE("least sizes and gutters that fit are kept, and the space is filled") {
  CHECK(rc::check("kept", [](std::uint64_t seed) {
    const Case c = randomCase(seed, true);
    const std::vector<Rect> boxes = sized(c);
    Rect all = boxes[0];
    for (std::size_t i = 0; i < boxes.size(); ++i) {
      RC_ASSERT(boxes[i].width() >= c.wishes[i].leastWidth - 1e-7);
      RC_ASSERT(boxes[i].height() >= c.wishes[i].leastHeight - 1e-7);
      all.max = {std::max(all.max.x, boxes[i].max.x), std::max(all.max.y, boxes[i].max.y)};
      for (std::size_t j = 0; j < i; ++j) {
        const double apartX =
            std::max(boxes[i].min.x - boxes[j].max.x, boxes[j].min.x - boxes[i].max.x);
        const double apartY =
            std::max(boxes[i].min.y - boxes[j].max.y, boxes[j].min.y - boxes[i].max.y);
        RC_ASSERT((apartX >= c.across - 1e-7 || apartY >= c.down - 1e-7));
      }
    }
    RC_ASSERT((all.max - kSpace.max).length() < 1e-7);
  }));
}

TEST_CASE("more weight never gives a panel less area") {
  CHECK(rc::check("area grows with weight", [](std::uint64_t seed) {
    Case c = randomCase(seed, true);
    Random random(seed + 2);
    const std::size_t panel = random.next() % c.wishes.size();
    const double before = sized(c)[panel].area();
    c.wishes[panel].weight *= 1 + 3 * random.uniform();
    RC_ASSERT(sized(c)[panel].area() >= before * (1 - 1e-9));
  }));
}

TEST_CASE("scaling page, gutters and least sizes scales the panels") {
  CHECK(rc::check("scales", [](std::uint64_t seed) {
    const Case small = randomCase(seed, true);
    Case large = small;
    for (PanelWish& wish : large.wishes) wish.leastWidth *= 2, wish.leastHeight *= 2;
    const std::vector<Rect> a = sized(small);
    const std::vector<Rect> b =
        sizeTree(large.tree, {{20, 40}, {320, 500}}, large.wishes, 2 * small.across, 2 * small.down,
                 ReadingDirection::LeftToRight);
    for (std::size_t i = 0; i < a.size(); ++i) {
      RC_ASSERT(std::abs(2 * a[i].min.x - b[i].min.x) < 1e-6);
      RC_ASSERT(std::abs(2 * a[i].max.y - b[i].max.y) < 1e-6);
    }
  }));
}

TEST_CASE("right to left mirrors the boxes") {
  CHECK(rc::check("mirrored", [](std::uint64_t seed) {
    const Case c = randomCase(seed, true);
    const std::vector<Rect> a = sized(c);
    const std::vector<Rect> b =
        sizeTree(c.tree, kSpace, c.wishes, c.across, c.down, ReadingDirection::RightToLeft);
    for (std::size_t i = 0; i < a.size(); ++i) {
      RC_ASSERT(std::abs(a[i].min.x + b[i].max.x - 2 * kSpace.centre().x) < 1e-9);
      RC_ASSERT(a[i].min.y == b[i].min.y);
    }
  }));
}

TEST_CASE("a wish for a wide panel makes it wider, for a tall one taller") {
  const TreeNode leaf;
  const TreeNode grid{false, {TreeNode{true, {leaf, leaf}}, TreeNode{true, {leaf, leaf}}}};
  std::vector<PanelWish> wishes(4);
  wishes[0].aspect = 2.5;
  const auto wide = sizeTree(grid, kSpace, wishes, 3, 3, ReadingDirection::LeftToRight)[0];
  wishes[0].aspect = 0.4;
  const auto tall = sizeTree(grid, kSpace, wishes, 3, 3, ReadingDirection::LeftToRight)[0];
  CHECK(wide.width() > tall.width() + 5);
  CHECK(wide.height() < tall.height() - 5);
}

}  // namespace
}  // namespace tw
