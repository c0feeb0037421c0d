// Rectangles for a tree in a given space: both axes sized and placed, the fold of a spread kept
// clear of borders, the dominant panel's least share reached if it can be. Everything here
// reads left to right; layout.cpp mirrors the page for the other direction.
#pragma once

#include <optional>
#include <vector>

#include "arrange/layout.h"
#include "arrange/sizing.h"

namespace tw {

inline constexpr double kFoldZone = 4;  ///< mm each side of the fold without a border; our choice

/// What the panels of one tree ask, ready for sizing.
struct SizeAsk {
  AxisAsk across, down;
  std::optional<double> fold;  ///< x of a spread's fold

  SizeAsk(const std::vector<PanelWish>& wishes, double gutterAcross, double gutterDown);
  /// Sets a panel's weight on both axes.
  void setWeight(std::size_t panel, double weight);
};

struct Boxes {
  std::array<Rect, kMostNodes> nodes;  ///< by node of the tree
  double shortfall = 0;                ///< of least sizes and the fold's zone, as in Layout
};

Boxes placeBoxes(const FlatTree& tree, const Rect& space, const SizeAsk& ask);

/// As placeBoxes, with the weight of panel `dominant` raised until its share of all panel areas
/// is at least `leastShare`, or as far as a bounded weight takes it.
Boxes placeBoxes(const FlatTree& tree, const Rect& space, SizeAsk ask, std::size_t dominant,
                 double leastShare);

/// The panels' boxes in reading order.
std::vector<Rect> panelBoxes(const FlatTree& tree, const Boxes& boxes);

}  // namespace tw
