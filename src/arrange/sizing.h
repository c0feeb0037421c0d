// How long every node of a tree is along one axis: the convex problem at the core of a page.
// Widths and heights never meet in it, so a page is two such problems. See sizing.cpp.
#pragma once

#include <array>

#include "arrange/flat_tree.h"

namespace tw {

enum class Axis { Across, Down };

using PerPanel = std::array<double, kMostLeaves>;
using PerNode = std::array<double, kMostNodes>;

struct AxisAsk {
  Axis axis = Axis::Across;
  double gutter = 0;  ///< between neighbours along this axis, mm
  PerPanel weights;   ///< > 0, by reading order
  PerPanel least;     ///< ≥ 0, mm, by reading order
};

/// Sizes of `node` (which is `length` long) and all nodes below it, mm. Returns the factor in
/// [0, 1] by which all least sizes had to shrink: 1 when they could be kept.
double sizeAxis(const FlatTree& tree, int node, const AxisAsk& ask, double length, PerNode& sizes);

/// The shortest length in which all least sizes and gutters fit.
double leastLength(const FlatTree& tree, const AxisAsk& ask);

/// The gutter that is really used in that length: the asked one, or less when gutters alone
/// would take more than half of it.
double usedGutter(const FlatTree& tree, int node, const AxisAsk& ask, double length);

}  // namespace tw
