// From a tree to panels on paper: sizing by weights with gutters and least sizes, then a shape
// treatment. See sizing.cpp for the convex problem and its closed form, layout.cpp for the way of a
// page through this folder.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "arrange/tree.h"
#include "geometry/shapes.h"
#include "job/brief.h"
#include "job/sheet.h"

namespace tw {

enum class Treatment { Plain, Bled, Ground, Slanted };
std::string_view nameOf(Treatment treatment);  ///< "plain", "bled", "ground", "slanted"

/// What one panel asks of its shape.
struct PanelWish {
  double weight = 1;      ///< of the area
  double leastWidth = 0;  ///< mm, on top of the sheet's own least
  double leastHeight = 0;
  double aspect = 0;  ///< width / height wanted by shot and copy, a leaning only; 0 = no wish
};

struct ArrangeRequest {
  Sheet sheet;
  bool rightHand = true;
  ReadingDirection direction = ReadingDirection::LeftToRight;
  std::vector<PanelWish> wishes;        ///< in reading order
  std::optional<std::size_t> dominant;  ///< index into wishes
  double leastDominantShare = 0;        ///< of the area of all panels
  bool bleeds = true;
  std::vector<Rect> keepClear;
};

struct LayoutPanel {
  Polygon outline;      ///< convex; clipped to the bleed
  bool bleeds = false;  ///< some side runs to the bleed
  bool ground = false;  ///< the full-page panel that others lie on
};

struct Layout {
  Treatment treatment = Treatment::Plain;
  std::string tree;
  std::vector<LayoutPanel> panels;  ///< in reading order, as the wishes
  /// How far least sizes and the dominant share had to give way: 0 when all were kept,
  /// otherwise the largest shortfall as a share of what was asked.
  double shortfall = 0;
  double dominantShare = 0;  ///< of the area of all panels, 0 without a dominant
};

/// Panel boxes of the tree inside `space` in reading order; the core of sizing.
/// Maximises the weighted sum of log areas subject to the tree, gutters and least sizes.
std::vector<Rect> sizeTree(const TreeNode& tree, const Rect& space,
                           const std::vector<PanelWish>& wishes, double gutterAcross,
                           double gutterDown, ReadingDirection direction);

/// The layout, or nothing when the treatment does not apply (no dominant for Ground, bleeds
/// forbidden for Bled, slants that would break a least size, …).
/// For Ground the tree orders all panels but the dominant one. Nothing also when the tree's
/// leaves are not as many as its panels. Different trees can give the same ground page.
std::optional<Layout> layOut(const ArrangeRequest& request, const PackedTree& tree,
                             Treatment treatment);

/// Equal for layouts that are the same to 0.5 mm in geometry and order: a key to de-duplicate.
std::uint64_t fingerprint(const Layout& layout);

}  // namespace tw
