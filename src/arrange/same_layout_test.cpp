#include <doctest/doctest.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <set>

#include "arrange/compare_layouts.h"
#include "arrange/layout.h"
#include "geometry/polygon.h"

namespace tw {
namespace {

Layout layoutOf(const std::vector<Rect>& boxes) {
  Layout layout;
  for (const Rect& box : boxes) layout.panels.push_back({polygonOf(box), false, false});
  return layout;
}

std::vector<PackedTree> treesOf(int panels) {
  Progress progress;
  return enumerateTrees(panels, progress).trees;
}

/// Each node cuts its box into equal parts.
void equalSplit(const TreeNode& node, const Rect& box, std::vector<Rect>& out) {
  if (node.isLeaf()) {
    out.push_back(box);
    return;
  }
  const auto parts = static_cast<double>(node.children.size());
  const Vector step = node.isRow ? Vector{box.width() / parts, 0} : Vector{0, box.height() / parts};
  const Vector size = node.isRow ? Vector{step.x, box.height()} : Vector{box.width(), step.y};
  Point corner = box.min;
  for (const TreeNode& child : node.children) {
    equalSplit(child, {corner, corner + size}, out);
    corner = corner + step;
  }
}

constexpr Rect kPage{{0, 0}, {1000, 1400}};

std::vector<Layout> splitLayouts(int panels) {
  std::vector<Layout> layouts;
  for (const PackedTree& tree : treesOf(panels)) {
    std::vector<Rect> boxes;
    equalSplit(treeFrom(tree), kPage, boxes);
    layouts.push_back(layoutOf(boxes));
  }
  return layouts;
}

std::vector<Layout> equalAreaLayouts(int panels) {
  std::vector<Layout> layouts;
  const std::vector<PanelWish> wishes(static_cast<std::size_t>(panels));
  for (const PackedTree& tree : treesOf(panels))
    layouts.push_back(
        layoutOf(sizeTree(treeFrom(tree), kPage, wishes, 0, 0, ReadingDirection::LeftToRight)));
  return layouts;
}

std::vector<Layout> differentPictures(const std::vector<Layout>& layouts) {
  std::vector<Layout> kept;
  for (const Layout& layout : layouts)
    if (std::none_of(kept.begin(), kept.end(),
                     [&](const Layout& other) { return samePicture(layout, other, 1e-6); }))
      kept.push_back(layout);
  return kept;
}

TEST_CASE("of the four-panel trees exactly one picture arises twice, in two orders") {
  // The 2 × 2 grid: tiers of columns and columns of tiers; 22 trees, 21 pictures.
  const std::vector<Layout> layouts = splitLayouts(4);
  int twins = 0;
  for (std::size_t i = 0; i < layouts.size(); ++i)
    for (std::size_t j = 0; j < i; ++j) {
      if (!samePicture(layouts[i], layouts[j])) continue;
      ++twins;
      CHECK_FALSE(sameLayout(layouts[i], layouts[j]));
      CHECK(fingerprint(layouts[i]) != fingerprint(layouts[j]));
    }
  CHECK(twins == 1);
  CHECK(layouts.size() == 22);
  CHECK(differentPictures(layouts).size() == 21);
}

TEST_CASE("different pictures number as an independent count found") {
  // Counted by a separate brute-force program for equal splits and for equal areas, n = 1 to 6.
  const std::array<std::size_t, 6> split{1, 2, 6, 21, 90, 388}, areas{1, 2, 6, 21, 86, 362};
  for (int n = 1; n <= 6; ++n) {
    CHECK(differentPictures(splitLayouts(n)).size() == split[static_cast<std::size_t>(n - 1)]);
    CHECK(differentPictures(equalAreaLayouts(n)).size() == areas[static_cast<std::size_t>(n - 1)]);
  }
}

bool sortKeepsOrder(const Layout& layout) {
  std::vector<std::pair<long, long>> corners;
  for (const LayoutPanel& panel : layout.panels) {
    const Point corner = bounds(panel.outline).min;
    corners.emplace_back(std::lround(corner.y * 1000), std::lround(corner.x * 1000));
  }
  return std::is_sorted(corners.begin(), corners.end());
}

TEST_CASE("sorting panels by place recovers the order only of a Catalan number of pages") {
  // 1, 2, 5, 14, 42, 132: OEIS A000108; that the counts agree was found by a separate
  // brute-force program.
  const std::array<std::ptrdiff_t, 6> a000108{1, 2, 5, 14, 42, 132};
  for (int n = 1; n <= 6; ++n) {
    const std::vector<Layout> layouts = equalAreaLayouts(n);
    CHECK(std::count_if(layouts.begin(), layouts.end(), sortKeepsOrder) ==
          a000108[static_cast<std::size_t>(n - 1)]);
  }
}

TEST_CASE("different orders and shapes have different fingerprints") {
  std::set<std::uint64_t> prints;
  for (const Layout& layout : equalAreaLayouts(6)) prints.insert(fingerprint(layout));
  CHECK(prints.size() == 394);
}

TEST_CASE("first corner and turn of an outline do not matter") {
  const Layout a = layoutOf({{{0, 0}, {40, 60}}});
  Layout b = a;
  std::vector<Point>& corners = b.panels[0].outline.points;
  std::rotate(corners.begin(), corners.begin() + 1, corners.end());
  CHECK(sameLayout(a, b));
  std::reverse(corners.begin(), corners.end());
  CHECK(sameLayout(a, b));
  CHECK(samePicture(a, b));
  CHECK(fingerprint(a) == fingerprint(b));
}

TEST_CASE("a border moved by more than the tolerance makes another layout") {
  const Layout a = layoutOf({{{0, 0}, {40, 60}}, {{43, 0}, {90, 60}}});
  const Layout near = layoutOf({{{0, 0}, {40.3, 60}}, {{43.3, 0}, {90, 60}}});
  const Layout far = layoutOf({{{0, 0}, {41, 60}}, {{44, 0}, {90, 60}}});
  CHECK(sameLayout(a, near));
  CHECK_FALSE(sameLayout(a, far));
  CHECK_FALSE(samePicture(a, far));
  CHECK(fingerprint(a) != fingerprint(far));
}

TEST_CASE("a panel as ground is not the same as one set between gutters") {
  Layout a = layoutOf({{{0, 0}, {40, 60}}}), b = a;
  b.panels[0].ground = true;
  CHECK_FALSE(sameLayout(a, b));
  CHECK(fingerprint(a) != fingerprint(b));
}

TEST_CASE("the free ground is the ground without its insets") {
  Layout layout = layoutOf({{{0, 0}, {100, 100}}, {{10, 10}, {30, 40}}, {{60, 60}, {90, 90}}});
  CHECK(freeGround(layout).empty());
  layout.panels[0].ground = true;
  const Region free = freeGround(layout);
  CHECK(area(free) == doctest::Approx(10000 - 600 - 900).epsilon(1e-6));
  CHECK(contains(free, {50, 50}));
  CHECK_FALSE(contains(free, {20, 20}));
}

}  // namespace
}  // namespace tw
