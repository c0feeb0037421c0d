// The dominant panel as full-page ground
//
// Idea. The dominant panel fills the sheet to the bleed (or the trim, where bleeds are forbidden)
// and the others lie on it as insets inside the live area. Insets that are read before the
// ground keep to where reading starts, those read after it to where it ends:
//
//   before: a band along the top, or a column on the side where lines start;
//   after:  a band along the bottom, or a column on the side where lines end.
//
// A band may run the whole length of its side or stop short of it, so that one inset does not
// become a ribbon. Each band is sized as a small page of its own (sizing.cpp) by the tree cut down
// to its panels.
//
// Steps. (1) The insets' share of the page = their share of the weights, no more than the
// dominant panel's least share leaves. (2) Each band's thickness follows from its share of that
// area, corrected once for gutters, and is at least what its least sizes need. (3) Where
// insets stand on both sides of the ground's place in the order, the node of the tree that parts
// them says whether the first ones lie above (stack) or at the start (row); every other place
// and length is tried. The best leaves the largest free rectangle for a figure on the ground
// and has the least stretched insets:
// worth = free share − kShapeWorth · mean |log(aspect / kBestAspect)|.
// (4) What the insets then cover beyond the least share is shortfall, as is any least size that
// gave way.
//
// Cost: at most twelve small sizings per page. What it does badly: insets never float in the middle
// of the ground and no more than two groups are made; kShapeWorth is our own choice, no source.
#include <algorithm>
#include <cmath>

#include "arrange/treatments.h"
#include "geometry/polygon.h"

namespace tw {

namespace {

constexpr double kMostInsetShare = 0.4;  // of the trim: more insets and it is no ground any more
constexpr double kMostThickness = 0.6;   // of the live area
constexpr double kShortBand = 0.62;      // of a side; our choice
constexpr double kShapeWorth = 0.1;      // see the head
constexpr double kBestAspect = 1.1;      // of an inset, width / height; our choice

enum class Side { Top, Start, Bottom, End };

int panelsBelow(const FlatTree& tree, int node) {
  int panels = 0;
  for (int i = node; i < tree[node].end; ++i) panels += tree[i].panel >= 0 ? 1 : 0;
  return panels;
}

bool isColumn(Side side) {
  return side == Side::Start || side == Side::End;
}

/// The panels before or after the ground, as a page of their own.
struct Group {
  FlatTree tree;
  SizeAsk ask;
  double area = 0;  ///< mm² that the insets should cover
};

struct Band {
  Rect rect;
  std::vector<Rect> panels;
  double shortfall = 0;
  double covered = 0;  ///< mm²
  double stretch = 0;  ///< sum of |log(aspect / kBestAspect)|
};

/// A rectangle that lies at a side of `room`: as thick as asked and `share` of the side long.
/// Bands before the ground start where reading starts, those after it end where reading ends.
Rect bandAt(Side side, const Rect& room, double thickness, double share) {
  const double w = isColumn(side) ? thickness : share * room.width();
  const double h = isColumn(side) ? share * room.height() : thickness;
  if (side == Side::Top || side == Side::Start) return {room.min, room.min + Vector{w, h}};
  return {room.max - Vector{w, h}, room.max};
}

Band filled(const Group& group, const Rect& rect) {
  const Boxes boxes = placeBoxes(group.tree, rect, group.ask);
  Band band{rect, panelBoxes(group.tree, boxes), boxes.shortfall, 0, 0};
  for (const Rect& box : band.panels) {
    band.covered += box.area();
    band.stretch += std::abs(std::log(box.width() / box.height() / kBestAspect));
  }
  return band;
}

/// Step (2) for one place.
Band bandFor(const Group& group, Side side, const Rect& room, double share) {
  const double length = share * (isColumn(side) ? room.height() : room.width());
  const double most = kMostThickness * (isColumn(side) ? room.width() : room.height());
  const double least = leastLength(group.tree, isColumn(side) ? group.ask.across : group.ask.down);
  const auto thick = [&](double t) { return std::min(std::max(t, least), most); };
  const double first = thick(group.area / length);
  Band band = filled(group, bandAt(side, room, first, share));
  const double second = thick(first * group.area / band.covered);
  return second == first ? band : filled(group, bandAt(side, room, second, share));
}

/// Largest empty rectangle in `page` beside the bands, mm². Its sides lie on the page's and the
/// bands' sides, so trying all of those finds it.
double largestFree(const Rect& page, const std::vector<Band>& bands) {
  std::vector<double> xs{page.min.x, page.max.x}, ys{page.min.y, page.max.y};
  for (const Band& band : bands) {
    xs.insert(xs.end(), {band.rect.min.x, band.rect.max.x});
    ys.insert(ys.end(), {band.rect.min.y, band.rect.max.y});
  }
  std::sort(xs.begin(), xs.end());
  std::sort(ys.begin(), ys.end());
  double largest = 0;
  for (std::size_t i = 0; i < xs.size(); ++i)
    for (std::size_t j = i + 1; j < xs.size(); ++j)
      for (std::size_t k = 0; k < ys.size(); ++k)
        for (std::size_t l = k + 1; l < ys.size(); ++l) {
          const Rect free{{xs[i], ys[k]}, {xs[j], ys[l]}};
          if (free.area() <= largest) continue;
          const bool meets = std::any_of(bands.begin(), bands.end(), [&](const Band& band) {
            return band.rect.min.x < free.max.x && band.rect.max.x > free.min.x &&
                   band.rect.min.y < free.max.y && band.rect.max.y > free.min.y;
          });
          if (!meets) largest = free.area();
        }
  return largest;
}

double worthOf(const Rect& page, const std::vector<Band>& bands) {
  double stretch = 0, panels = 0, shortfall = 0;
  for (const Band& band : bands) {
    stretch += band.stretch;
    panels += static_cast<double>(band.panels.size());
    shortfall = std::max(shortfall, band.shortfall);
  }
  return largestFree(page, bands) / page.area() - kShapeWorth * stretch / panels - shortfall;
}

/// What is left of the live area once the band before the ground is taken.
Rect roomAfter(const Rect& live, const Group& group, const Band& band, Side side) {
  Rect room = live;
  if (isColumn(side))
    room.min.x = band.rect.max.x + group.ask.across.gutter;
  else
    room.min.y = band.rect.max.y + group.ask.down.gutter;
  return room;
}

/// Better of the long and the short band at one side.
Band bestBand(const Group& group, Side side, const Rect& room, const Rect& page) {
  Band whole = bandFor(group, side, room, 1);
  Band shorter = bandFor(group, side, room, kShortBand);
  return worthOf(page, {whole}) >= worthOf(page, {shorter}) ? whole : shorter;
}

/// Step (3) for insets that are all read before or all after the ground.
std::vector<Band> bestOfOne(const Group& group, bool isBefore, const Rect& live, const Rect& page) {
  const Side along = isBefore ? Side::Top : Side::Bottom;
  Band flat = bestBand(group, along, live, page);
  Band tall = bestBand(group, isBefore ? Side::Start : Side::End, live, page);
  if (worthOf(page, {flat}) >= worthOf(page, {tall})) return {std::move(flat)};
  return {std::move(tall)};
}

/// Step (3) for insets on both sides of the ground's place in the order.
std::vector<Band> bestOfTwo(const std::vector<Group>& groups, bool sideBySide, const Rect& live,
                            const Rect& page) {
  const Side side = sideBySide ? Side::Start : Side::Top;
  const Band before = bestBand(groups[0], side, live, page);
  const Rect room = roomAfter(live, groups[0], before, side);
  std::vector<Band> flat{before, bestBand(groups[1], Side::Bottom, room, page)};
  std::vector<Band> tall{before, bestBand(groups[1], Side::End, room, page)};
  return worthOf(page, flat) >= worthOf(page, tall) ? flat : tall;
}

/// Whether the tree sets panels `cut − 1` and `cut` side by side: the node that parts them is a
/// row.
bool partedByRow(const FlatTree& tree, int cut) {
  int parting = 0;
  for (int node = 0, panel = 0; node < tree.count && panel < cut; ++node) {
    // Still before the cut: this node parts them when its panels reach beyond it.
    if (tree[node].panel >= 0)
      ++panel;
    else if (panel + panelsBelow(tree, node) > cut)
      parting = node;
  }
  return tree[parting].isRow;
}

double weightOf(const std::vector<PanelWish>& wishes) {
  double sum = 0;
  for (const PanelWish& wish : wishes) sum += wish.weight;
  return sum;
}

/// Steps (1): the groups with the area each should cover.
std::vector<Group> groupsOf(const ArrangeRequest& request, const Paper& paper,
                            const PackedTree& tree) {
  const std::vector<PanelWish> wishes = wishesOn(request);
  const auto cut = static_cast<std::ptrdiff_t>(*request.dominant);
  const double all = weightOf(wishes);
  const double insets = all - wishes[*request.dominant].weight;
  const double share = std::min({insets / all, 1 - request.leastDominantShare, kMostInsetShare});
  std::vector<Group> groups;
  const auto add = [&](std::vector<PanelWish> part, int first) {
    if (part.empty()) return;
    const int last = first + static_cast<int>(part.size());
    Group group{flatTree(restricted(tree, first, last)),
                SizeAsk(part, request.sheet.gutterAcross, request.sheet.gutterDown),
                share * paper.trim.area() * weightOf(part) / insets};
    group.ask.fold = paper.fold;
    groups.push_back(std::move(group));
  };
  add({wishes.begin(), wishes.begin() + cut}, 0);
  add({wishes.begin() + cut + 1, wishes.end()}, static_cast<int>(cut));
  return groups;
}

}  // namespace

std::optional<Layout> groundLayout(const ArrangeRequest& request, const Paper& paper,
                                   const PackedTree& tree) {
  if (!request.dominant || request.wishes.size() < 2) return std::nullopt;
  const std::size_t dominant = *request.dominant;
  const std::vector<Group> groups = groupsOf(request, paper, tree);
  const bool sideBySide = partedByRow(flatTree(tree), static_cast<int>(dominant));
  const std::vector<Band> bands = groups.size() == 2
                                      ? bestOfTwo(groups, sideBySide, paper.live, paper.trim)
                                      : bestOfOne(groups[0], dominant > 0, paper.live, paper.trim);

  Layout layout;
  layout.treatment = Treatment::Ground;
  for (const Band& band : bands) {
    for (const Rect& box : band.panels) layout.panels.push_back({polygonOf(box), false, false});
    layout.shortfall = std::max(layout.shortfall, band.shortfall);
  }
  const Rect sheet = request.bleeds ? paper.bleed : paper.trim;
  layout.panels.insert(layout.panels.begin() + static_cast<std::ptrdiff_t>(dominant),
                       {polygonOf(sheet), request.bleeds, true});
  return layout;
}

}  // namespace tw
