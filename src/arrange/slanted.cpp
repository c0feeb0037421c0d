// Slanted gutters
//
// Idea. The cuts of the first two levels of the tree are turned by a few degrees about their
// middle, neighbours in opposite directions, and everything below them is cut straight. A panel is
// then the live area clipped by half-planes: convex whatever the angles, its outer corners
// on the live edge. Each gutter is bounded by two parallel lines, half its width to either side of
// the turned cut, so it stays as wide as it was.
//
// Steps. (1) Size the boxes as for a plain page. (2) For each cut, find the panels that touch it;
// the tightest of them says how far the cut may reach into a neighbour: no more than kMostBite of
// its extent, and at most half of what it has above its least size, as its other side
// may be bitten too. (3) Turn by kMostTilt or what that allows; under kLeastTilt the cut would look
// like a mistake and stays straight. (4) Clip, top down. A page with too little turned length is no
// slanted page.
//
// Cost: one clip per node and cut. What it does badly: areas leave the weights by a few per cent;
// cuts near a spread's fold are never turned. The angles are common practice, no source.
#include <algorithm>
#include <cmath>
#include <numbers>

#include "arrange/clip_convex.h"
#include "arrange/treatments.h"
#include "geometry/polygon.h"

namespace tw {

namespace {

constexpr double kDegree = std::numbers::pi / 180;
constexpr double kMostTilt = 6;     // degrees
constexpr double kLeastTilt = 2.5;  // degrees
constexpr double kMostBite = 0.15;  // of a neighbour's extent across the cut
constexpr double kShareMargin = 1.02;
constexpr int kTiltedLevels = 2;
constexpr double kLeastTurned = 0.8;   // of the live width: less is one odd cut on a straight page
constexpr double kOnEdge = 1e-6;       // mm
constexpr double kTallerByTilt = 1.2;  // a tier between turned cuts is higher at its end

/// Between two neighbours: runs through `on`, `normal` points to the later one.
struct Cut {
  Point on;
  Vector normal;
  double gutter = 0;
};

/// A turned cut may take a little from the dominant panel, so it is given that much more.
ArrangeRequest withMargin(ArrangeRequest request) {
  request.leastDominantShare = std::min(0.95, request.leastDominantShare * kShareMargin);
  return request;
}

class Slanting {
 public:
  Slanting(const ArrangeRequest& request, const Paper& paper, const PackedTree& tree)
      : wishes_(wishesOn(request)),
        paper_(paper),
        tree_(flatTree(tree)),
        boxes_(boxesOn(withMargin(request), paper, tree_)) {}

  std::optional<Layout> layOut() {
    Layout layout;
    layout.treatment = Treatment::Slanted;
    layout.shortfall = boxes_.shortfall;
    layout.panels.resize(static_cast<std::size_t>(tree_.panels));
    outline(0) = polygonOf(paper_.live);
    for (int node = 0; node < tree_.count; ++node) {
      if (tree_[node].panel < 0)
        cutChildren(node);
      else
        layout.panels[static_cast<std::size_t>(tree_[node].panel)].outline = outline(node);
    }
    if (turnedLength_ < kLeastTurned * paper_.live.width()) return std::nullopt;
    return layout;
  }

 private:
  Polygon& outline(int node) { return outlines_[static_cast<std::size_t>(node)]; }
  const Rect& box(int node) const { return boxes_.nodes[static_cast<std::size_t>(node)]; }

  int level(int node) const { return tree_[node].parent < 0 ? 0 : 1 + level(tree_[node].parent); }

  void cutChildren(int node) {
    int child = node + 1;
    Polygon rest = outline(node);
    for (int i = 1; i < tree_[node].children; ++i) {
      const int next = tree_[child].end;
      const Cut cut = cutBetween(node, child, next);
      const Vector half = cut.normal * (cut.gutter / 2);
      outline(child) = clipped(rest, cut.on - half, cut.normal);
      rest = clipped(rest, cut.on + half, -cut.normal);
      child = next;
    }
    outline(child) = std::move(rest);
  }

  Cut cutBetween(int node, int before, int after) {
    const bool isRow = tree_[node].isRow;
    const Rect &a = box(before), &b = box(after);
    Cut cut;
    if (isRow) {
      cut = {{(a.max.x + b.min.x) / 2, box(node).centre().y}, {1, 0}, b.min.x - a.max.x};
    } else {
      cut = {{box(node).centre().x, (a.max.y + b.min.y) / 2}, {0, 1}, b.min.y - a.max.y};
    }
    if (level(node) >= kTiltedLevels) return cut;
    const double angle = angleBetween(node, before, after);
    if (angle == 0) return cut;
    turnedLength_ += isRow ? box(node).height() : box(node).width();
    const double turn = (turns_++ % 2 == 0 ? -angle : angle);
    cut.normal =
        isRow ? Vector{std::cos(turn), std::sin(turn)} : Vector{-std::sin(turn), std::cos(turn)};
    return cut;
  }

  bool mayTurnIntoFold(int node, int before, int after) const {
    const double left = box(before).max.x, right = box(after).min.x;
    const double swing = std::tan(kMostTilt * kDegree) * box(node).height() * kTallerByTilt / 2;
    const double away = std::abs((left + right) / 2 - *paper_.fold);
    return away < kFoldZone + (right - left) / 2 + swing;
  }

  /// Steps (2) and (3), radians.
  double angleBetween(int node, int before, int after) const {
    const bool isRow = tree_[node].isRow;
    if (isRow && paper_.fold && mayTurnIntoFold(node, before, after)) return 0;
    const double reach = std::min(bite(before, isRow, true), bite(after, isRow, false));
    const double length = isRow ? box(node).height() : box(node).width();
    const double angle = std::min(kMostTilt * kDegree, std::atan(2 * reach / length));
    return angle < kLeastTilt * kDegree ? 0 : angle;
  }

  /// How far a cut may reach into the panels of `node` that touch it.
  double bite(int node, bool isRow, bool atEnd) const {
    double least = isRow ? box(node).width() : box(node).height();
    for (int i = node; i < tree_[node].end; ++i) {
      if (tree_[i].panel < 0 || !touches(i, node, isRow, atEnd)) continue;
      const PanelWish& wish = wishes_[static_cast<std::size_t>(tree_[i].panel)];
      const double extent = isRow ? box(i).width() : box(i).height();
      const double needed = isRow ? wish.leastWidth : wish.leastHeight;
      least = std::min({least, kMostBite * extent, std::max(0.0, extent - needed) / 2});
    }
    return least;
  }

  bool touches(int leaf, int node, bool isRow, bool atEnd) const {
    const Rect &own = box(leaf), &all = box(node);
    if (isRow) return std::abs(atEnd ? own.max.x - all.max.x : own.min.x - all.min.x) < kOnEdge;
    return std::abs(atEnd ? own.max.y - all.max.y : own.min.y - all.min.y) < kOnEdge;
  }

  std::vector<PanelWish> wishes_;
  const Paper& paper_;
  FlatTree tree_;
  Boxes boxes_;
  std::array<Polygon, kMostNodes> outlines_;
  double turnedLength_ = 0;  ///< mm of turned cuts
  int turns_ = 0;
};

}  // namespace

std::optional<Layout> slantedLayout(const ArrangeRequest& request, const Paper& paper,
                                    const PackedTree& tree) {
  return Slanting(request, paper, tree).layOut();
}

}  // namespace tw
