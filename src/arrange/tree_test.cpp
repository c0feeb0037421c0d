#include "arrange/tree.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <array>
#include <set>

#include "arrange/flat_tree.h"

namespace tw {
namespace {

TreeList allTrees(int panels) {
  Progress progress;
  return enumerateTrees(panels, progress);
}

int leavesOf(const TreeNode& node) {
  int sum = node.isLeaf() ? 1 : 0;
  for (const TreeNode& child : node.children) sum += leavesOf(child);
  return sum;
}

int depthOf(const TreeNode& node) {
  int deepest = -1;
  for (const TreeNode& child : node.children) deepest = std::max(deepest, depthOf(child));
  return deepest + 1;
}

std::size_t mostChildren(const TreeNode& node) {
  std::size_t most = node.children.size();
  for (const TreeNode& child : node.children) most = std::max(most, mostChildren(child));
  return most;
}

bool isCanonical(const TreeNode& node) {
  if (node.isLeaf()) return true;
  return node.children.size() >= 2 &&
         std::all_of(node.children.begin(), node.children.end(), [&](const TreeNode& child) {
           return isCanonical(child) && (child.isLeaf() || child.isRow != node.isRow);
         });
}

template <class Test>
int countWhere(int panels, Test test) {
  int count = 0;
  for (const PackedTree& tree : allTrees(panels).trees) count += test(treeFrom(tree)) ? 1 : 0;
  return count;
}

TEST_CASE("the trees of 1 to 10 panels number the large Schröder numbers") {
  // OEIS A006318: 1, 2, 6, 22, 90, 394, 1806, 8558, 41586, 206098, …
  const std::array<std::size_t, 10> a006318{1, 2, 6, 22, 90, 394, 1806, 8558, 41586, 206098};
  for (int n = 1; n <= 10; ++n) {
    const TreeList list = allTrees(n);
    CHECK(list.exhaustive);
    CHECK(list.trees.size() == a006318[static_cast<std::size_t>(n - 1)]);
    CHECK(list.counted == list.trees.size());
  }
}

TEST_CASE("the formula goes on as the sequence does beyond what is listed") {
  // OEIS A006318, terms 10 to 13.
  CHECK(treeCount(11) == 1037718);
  CHECK(treeCount(12) == 5293446);
  CHECK(treeCount(13) == 27297738);
  CHECK(treeCount(14) == 142078746);
}

TEST_CASE("every tree is listed once, is canonical and holds each panel") {
  for (int n = 1; n <= 8; ++n) {
    const TreeList list = allTrees(n);
    CHECK(std::set<PackedTree>(list.trees.begin(), list.trees.end()).size() == list.trees.size());
    CHECK(countWhere(n, [&](const TreeNode& t) { return isCanonical(t) && leavesOf(t) == n; }) ==
          static_cast<int>(list.trees.size()));
  }
}

TEST_CASE("half of the trees begin with tiers, half with columns") {
  // OEIS A001003, little Schröder numbers: 1, 3, 11, 45, 197, 903.
  const std::array<int, 6> a001003{1, 3, 11, 45, 197, 903};
  for (int n = 2; n <= 7; ++n)
    CHECK(countWhere(n, [](const TreeNode& t) { return !t.isRow; }) ==
          a001003[static_cast<std::size_t>(n - 2)]);
}

TEST_CASE("trees by depth and by most children number as an independent count found") {
  // Counted by a separate brute-force program and, for the depths, a recurrence.
  const std::array<std::array<int, 4>, 4> byDepth{
      {{2, 14, 22, 22}, {2, 30, 74, 90}, {2, 62, 234, 362}, {2, 126, 714, 1406}}};
  for (int n = 4; n <= 7; ++n)
    for (int depth = 1; depth <= 4; ++depth)
      CHECK(countWhere(n, [&](const TreeNode& t) { return depthOf(t) <= depth; }) ==
            byDepth[static_cast<std::size_t>(n - 4)][static_cast<std::size_t>(depth - 1)]);
  const std::array<std::array<int, 2>, 4> byChildren{
      {{20, 22}, {76, 88}, {308, 378}, {1308, 1700}}};
  for (int n = 4; n <= 7; ++n)
    for (std::size_t most = 3; most <= 4; ++most)
      CHECK(countWhere(n, [&](const TreeNode& t) { return mostChildren(t) <= most; }) ==
            byChildren[static_cast<std::size_t>(n - 4)][most - 3]);
}

TEST_CASE("pages in tiers by number of tiers number as an independent count found") {
  // Counted by a separate brute-force program: n = 6 has 121, 52, 18, 5, 1 for 2 to 6 tiers.
  const std::array<int, 5> six{121, 52, 18, 5, 1};
  for (std::size_t tiers = 2; tiers <= 6; ++tiers)
    CHECK(countWhere(6, [&](const TreeNode& t) {
            return !t.isRow && t.children.size() == tiers;
          }) == six[tiers - 2]);
}

TEST_CASE("a tree survives packing") {
  for (const PackedTree& tree : allTrees(7).trees) CHECK(packed(treeFrom(tree)) == tree);
}

TEST_CASE("the notation shows rows in round and stacks in square brackets") {
  const TreeNode leaf;
  const TreeNode tier{true, {leaf, leaf}};
  CHECK(notation(leaf) == "1");
  CHECK(notation(TreeNode{false, {leaf, tier, leaf}}) == "[1 (2 3) 4]");
}

TEST_CASE("above ten panels a beam of the asked size is kept and says so") {
  Progress progress;
  for (const int n : {11, 16, kMostLeaves}) {
    const TreeList list = enumerateTrees(n, progress, 500);
    CHECK_FALSE(list.exhaustive);
    CHECK(list.trees.size() == 500);
    CHECK(list.counted == treeCount(n));
    CHECK(std::set<PackedTree>(list.trees.begin(), list.trees.end()).size() == 500);
    for (const PackedTree& tree : list.trees) {
      CHECK(isCanonical(treeFrom(tree)));
      CHECK(leavesOf(treeFrom(tree)) == n);
    }
  }
}

TEST_CASE("the beam begins with even tiers") {
  Progress progress;
  CHECK(notation(treeFrom(enumerateTrees(12, progress, 10).trees.front())) ==
        "[(1 2 3 4) (5 6 7 8) (9 10 11 12)]");
  CHECK(notation(treeFrom(enumerateTrees(16, progress, 10).trees.front())) ==
        "[(1 2 3 4) (5 6 7 8) (9 10 11 12) (13 14 15 16)]");
}

TEST_CASE("a longer beam only adds trees at the end") {
  Progress progress;
  const TreeList few = enumerateTrees(13, progress, 200);
  const TreeList many = enumerateTrees(13, progress, 3000);
  CHECK(std::equal(few.trees.begin(), few.trees.end(), many.trees.begin()));
}

TEST_CASE("there are no trees for no panels or for absurdly many") {
  CHECK(allTrees(0).trees.empty());
  CHECK(allTrees(-3).trees.empty());
  CHECK(allTrees(kMostLeaves + 1).trees.empty());
}

TEST_CASE("listing stops when told to") {
  Progress progress;
  progress.stop();
  CHECK(enumerateTrees(10, progress).trees.empty());
  CHECK(enumerateTrees(14, progress).trees.empty());
}

std::string restrictedNotation(const TreeNode& tree, int first, int last) {
  return notation(treeFrom(restricted(packed(tree), first, last)));
}

TEST_CASE("a tree cut down to some panels stays canonical") {
  const TreeNode leaf;
  const TreeNode pair{true, {leaf, leaf}};
  const TreeNode page{false, {leaf, TreeNode{true, {leaf, TreeNode{false, {leaf, pair}}}}, leaf}};
  CHECK(notation(page) == "[1 (2 [3 (4 5)]) 6]");
  CHECK(restrictedNotation(page, 0, 2) == "[1 2]");
  CHECK(restrictedNotation(page, 2, 6) == "[1 (2 3) 4]");
  CHECK(restrictedNotation(page, 5, 6) == "1");
  for (const PackedTree& tree : allTrees(6).trees) {
    const TreeNode part = treeFrom(restricted(tree, 1, 5));
    CHECK(isCanonical(part));
    CHECK(leavesOf(part) == 4);
  }
}

}  // namespace
}  // namespace tw
