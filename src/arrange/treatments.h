// The four ways of turning a tree into panels. All work in a page that reads left to right; the
// ground and slanted ones are described in ground.cpp and slanted.cpp.
#pragma once

#include <optional>

#include "arrange/boxes.h"
#include "arrange/layout.h"

namespace tw {

/// The page a layout is made for, turned so that it reads left to right.
struct Paper {
  Rect trim, bleed, live;
  std::optional<double> fold;

  explicit Paper(const ArrangeRequest& request);
};

/// The wishes with the sheet's own least sizes put in.
std::vector<PanelWish> wishesOn(const ArrangeRequest& request);

/// The boxes of a tree over all panels in the live area, dominant share included.
Boxes boxesOn(const ArrangeRequest& request, const Paper& paper, const FlatTree& tree);

std::optional<Layout> plainLayout(const ArrangeRequest&, const Paper&, const PackedTree&);
std::optional<Layout> bledLayout(const ArrangeRequest&, const Paper&, const PackedTree&);
std::optional<Layout> groundLayout(const ArrangeRequest&, const Paper&, const PackedTree&);
std::optional<Layout> slantedLayout(const ArrangeRequest&, const Paper&, const PackedTree&);

}  // namespace tw
