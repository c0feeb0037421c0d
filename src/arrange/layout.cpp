// From a tree to panels
//
// Idea. The tree says who stands beside and above whom; sizing.cpp finds the best widths and
// heights (the mathematics and the closed form are there); boxes.cpp places them, clears the
// fold of a spread and raises the dominant panel's weight until it has its least share; a
// treatment then decides how borders meet the paper:
//
//   plain     every panel a rectangle in the live area;
//   bled      the dominant panel runs to the bleed on each side where it touches the live edge;
//             without a dominant, all panels on the live edge do; borders elsewhere stay;
//   ground    ground.cpp: the dominant panel fills the page, the others lie on it;
//   slanted   slanted.cpp: the first two levels of cuts are tilted.
//
// Steps: (1) turn the page so that it reads left to right, (2) size and treat, (3) mirror the
// result back for right-to-left reading, (4) measure the dominant share inside the trim, where
// the reader sees it. A mirrored request with the direction turned is thus mirrored by
// construction.
#include "arrange/layout.h"

#include <algorithm>
#include <cmath>

#include "arrange/measure_layout.h"
#include "arrange/treatments.h"
#include "base/result.h"
#include "geometry/polygon.h"

namespace tw {

namespace {

constexpr double kShareRounding = 1e-9;
constexpr double kOnEdge = 1e-6;  // mm; a box side that far off the live edge lies on it

Rect mirrored(const Rect& rect, double axis) {
  return {{2 * axis - rect.max.x, rect.min.y}, {2 * axis - rect.min.x, rect.max.y}};
}

std::string notationOf(const PackedTree& tree) {
  return notation(treeFrom(tree));
}

Layout rectangles(const std::vector<Rect>& boxes, double shortfall, Treatment treatment) {
  Layout layout;
  layout.treatment = treatment;
  layout.shortfall = shortfall;
  for (const Rect& box : boxes) layout.panels.push_back({polygonOf(box), false, false});
  return layout;
}

/// Moves each side that lies on `from` to the same side of `to`; true when any did.
bool runOut(Rect& box, const Rect& from, const Rect& to) {
  const Rect before = box;
  if (std::abs(box.min.x - from.min.x) < kOnEdge) box.min.x = to.min.x;
  if (std::abs(box.min.y - from.min.y) < kOnEdge) box.min.y = to.min.y;
  if (std::abs(box.max.x - from.max.x) < kOnEdge) box.max.x = to.max.x;
  if (std::abs(box.max.y - from.max.y) < kOnEdge) box.max.y = to.max.y;
  return box != before;
}

bool fits(const ArrangeRequest& request, const PackedTree& tree, Treatment treatment) {
  const std::size_t ground = treatment == Treatment::Ground ? 1 : 0;
  const auto leaves = static_cast<std::size_t>(std::count(tree.begin(), tree.end(), '\0'));
  return leaves + ground == request.wishes.size() && request.wishes.size() <= kMostLeaves &&
         (!request.dominant || *request.dominant < request.wishes.size());
}

std::optional<Layout> treated(const ArrangeRequest& request, const Paper& paper,
                              const PackedTree& tree, Treatment treatment) {
  switch (treatment) {
    case Treatment::Plain:
      return plainLayout(request, paper, tree);
    case Treatment::Bled:
      return bledLayout(request, paper, tree);
    case Treatment::Ground:
      return groundLayout(request, paper, tree);
    case Treatment::Slanted:
      return slantedLayout(request, paper, tree);
  }
  return std::nullopt;
}

}  // namespace

std::string_view nameOf(Treatment treatment) {
  switch (treatment) {
    case Treatment::Plain:
      return "plain";
    case Treatment::Bled:
      return "bled";
    case Treatment::Ground:
      return "ground";
    case Treatment::Slanted:
      return "slanted";
  }
  return "plain";
}

Paper::Paper(const ArrangeRequest& request)
    : trim(request.sheet.trimRect()),
      bleed(request.sheet.bleedRect()),
      live(request.sheet.liveRect(request.rightHand)) {
  const double middle = request.sheet.trimWidth / 2;
  if (request.direction == ReadingDirection::RightToLeft) live = mirrored(live, middle);
  if (request.sheet.spread) fold = middle;
}

std::vector<PanelWish> wishesOn(const ArrangeRequest& request) {
  std::vector<PanelWish> wishes = request.wishes;
  for (PanelWish& wish : wishes) {
    wish.leastWidth = std::max(wish.leastWidth, request.sheet.leastPanelWidth);
    wish.leastHeight = std::max(wish.leastHeight, request.sheet.leastPanelHeight);
  }
  return wishes;
}

Boxes boxesOn(const ArrangeRequest& request, const Paper& paper, const FlatTree& tree) {
  SizeAsk ask(wishesOn(request), request.sheet.gutterAcross, request.sheet.gutterDown);
  ask.fold = paper.fold;
  if (!request.dominant) return placeBoxes(tree, paper.live, ask);
  return placeBoxes(tree, paper.live, ask, *request.dominant, request.leastDominantShare);
}

std::optional<Layout> plainLayout(const ArrangeRequest& request, const Paper& paper,
                                  const PackedTree& tree) {
  const FlatTree flat = flatTree(tree);
  const Boxes boxes = boxesOn(request, paper, flat);
  return rectangles(panelBoxes(flat, boxes), boxes.shortfall, Treatment::Plain);
}

std::optional<Layout> bledLayout(const ArrangeRequest& request, const Paper& paper,
                                 const PackedTree& tree) {
  if (!request.bleeds) return std::nullopt;
  const FlatTree flat = flatTree(tree);
  const Boxes boxes = boxesOn(request, paper, flat);
  std::vector<Rect> panels = panelBoxes(flat, boxes);
  std::vector<bool> bled(panels.size());
  for (std::size_t i = 0; i < panels.size(); ++i)
    if (!request.dominant || i == *request.dominant)
      bled[i] = runOut(panels[i], paper.live, paper.bleed);
  if (std::find(bled.begin(), bled.end(), true) == bled.end()) return std::nullopt;
  Layout layout = rectangles(panels, boxes.shortfall, Treatment::Bled);
  for (std::size_t i = 0; i < panels.size(); ++i) layout.panels[i].bleeds = bled[i];
  return layout;
}

std::vector<Rect> sizeTree(const TreeNode& tree, const Rect& space,
                           const std::vector<PanelWish>& wishes, double gutterAcross,
                           double gutterDown, ReadingDirection direction) {
  const FlatTree flat = flatTree(packed(tree));
  ensure(static_cast<std::size_t>(flat.panels) == wishes.size(), "one wish for each panel");
  std::vector<Rect> boxes =
      panelBoxes(flat, placeBoxes(flat, space, SizeAsk(wishes, gutterAcross, gutterDown)));
  if (direction == ReadingDirection::RightToLeft)
    for (Rect& box : boxes) box = mirrored(box, space.centre().x);
  return boxes;
}

std::optional<Layout> layOut(const ArrangeRequest& request, const PackedTree& tree,
                             Treatment treatment) {
  if (!fits(request, tree, treatment)) return std::nullopt;
  const Paper paper(request);
  std::optional<Layout> layout = treated(request, paper, tree, treatment);
  if (!layout) return layout;
  layout->tree = notationOf(tree);
  if (request.dominant) {
    const double share = dominantShareOf(*layout, *request.dominant, paper.trim);
    const double asked = request.leastDominantShare;
    layout->dominantShare = share;
    if (asked > 0 && share < asked * (1 - kShareRounding))
      layout->shortfall = std::max(layout->shortfall, (asked - share) / asked);
  }
  if (request.direction == ReadingDirection::RightToLeft)
    for (LayoutPanel& panel : layout->panels)
      panel.outline = mirrored(panel.outline, request.sheet.trimWidth / 2);
  return layout;
}

}  // namespace tw
