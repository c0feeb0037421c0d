#include "arrange/boxes.h"

#include <algorithm>
#include <cmath>

namespace tw {

namespace {

// How strongly a wished aspect leans on the two axes. Our own choice: an aspect of 2 moves 17 %
// of a panel's weight from the height to the width problem.
constexpr double kAspectLean = 0.25;
constexpr double kMostLean = 0.4;

constexpr double kShareTolerance = 6e-3;  // of the asked share; finer cannot be seen
constexpr int kShareSteps = 24;
constexpr double kMostOdds = 6;       // heaviest weight / weight of the closed form
constexpr double kGuessAbove = 0.02;  // logarithm; gutters take more from small panels
constexpr double kStride = 0.7;       // logarithm, while no weight is known to be enough

double leanFor(double aspect) {
  return aspect > 0 ? std::clamp(kAspectLean * std::log(aspect), -kMostLean, kMostLean) : 0;
}

/// Places children inside their parents once the sizes along both axes are known.
class Placing {
 public:
  Placing(const FlatTree& tree, const SizeAsk& ask, Boxes& boxes)
      : tree_(tree), ask_(ask), boxes_(boxes) {}

  void place(const Rect& space) {
    const double kept = std::min(sizeAxis(tree_, 0, ask_.across, space.width(), widths_),
                                 sizeAxis(tree_, 0, ask_.down, space.height(), heights_));
    boxes_.shortfall = 1 - kept;
    gutterAcross_ = usedGutter(tree_, 0, ask_.across, space.width());
    gutterDown_ = usedGutter(tree_, 0, ask_.down, space.height());
    box(0) = space;
    for (int node = 0; node < tree_.count; ++node)
      if (tree_[node].panel < 0) placeChildren(node);
    if (ask_.fold) checkFold();
  }

 private:
  Rect& box(int node) { return boxes_.nodes[static_cast<std::size_t>(node)]; }
  double& width(int node) { return widths_[static_cast<std::size_t>(node)]; }
  double& height(int node) { return heights_[static_cast<std::size_t>(node)]; }

  void placeChildren(int node) {
    const bool isRow = tree_[node].isRow;
    if (isRow && ask_.fold) clearFold(node);
    Point corner = box(node).min;
    int child = node + 1;
    for (int i = 0; i < tree_[node].children; ++i, child = tree_[child].end) {
      box(child) = {corner, corner + Vector{width(child), height(child)}};
      if (isRow)
        corner.x += width(child) + gutterAcross_;
      else
        corner.y += height(child) + gutterDown_;
    }
  }

  /// Moves the row's gutter nearest to the fold onto it, when one of its borders is too near.
  void clearFold(int node) {
    const double fold = *ask_.fold;
    double right = box(node).min.x, nearest = kFoldZone + gutterAcross_ / 2;
    int before = 0;  // children left of the gutter to be moved
    int child = node + 1;
    double cut = 0;
    for (int i = 1; i < tree_[node].children; ++i, child = tree_[child].end) {
      right += width(child);
      const double away = std::abs(right + gutterAcross_ / 2 - fold);
      if (away < nearest) nearest = away, before = i, cut = right;
      right += gutterAcross_;
    }
    if (before == 0) return;
    const double start = box(node).min.x, end = box(node).max.x, half = gutterAcross_ / 2;
    stretch(node, 0, before, cut - start, fold - half - start);
    stretch(node, before, tree_[node].children, end - cut - gutterAcross_, end - fold - half);
  }

  /// Scales children [first, last) of a row, gutters left alone, and sizes them anew inside.
  void stretch(int node, int first, int last, double from, double to) {
    const double gutters = (last - first - 1) * gutterAcross_;
    const double factor = std::max(0.1, (to - gutters) / (from - gutters));
    int child = node + 1;
    for (int i = 0; i < last; ++i, child = tree_[child].end) {
      if (i < first) continue;
      const double length = factor * width(child);
      const double kept = sizeAxis(tree_, child, ask_.across, length, widths_);
      boxes_.shortfall = std::max(boxes_.shortfall, 1 - kept);
    }
  }

  void checkFold() {
    for (int node = 0; node < tree_.count; ++node) {
      if (tree_[node].panel < 0) continue;
      const double left = box(node).min.x - *ask_.fold, right = *ask_.fold - box(node).max.x;
      // A border half a gutter off the fold, with the fold outside the panel, is a gutter on it.
      for (const double away : {left, right})
        if (std::abs(away) < kFoldZone && std::abs(away - gutterAcross_ / 2) > 1e-6)
          boxes_.shortfall = std::max(boxes_.shortfall, 1 - std::abs(away) / kFoldZone);
    }
  }

  const FlatTree& tree_;
  const SizeAsk& ask_;
  Boxes& boxes_;
  PerNode widths_, heights_;
  double gutterAcross_ = 0, gutterDown_ = 0;
};

double shareOf(const FlatTree& tree, const Boxes& boxes, std::size_t panel) {
  double all = 0, own = 0;
  for (int node = 0; node < tree.count; ++node) {
    if (tree[node].panel < 0) continue;
    const double area = boxes.nodes[static_cast<std::size_t>(node)].area();
    all += area;
    if (tree[node].panel == static_cast<int>(panel)) own = area;
  }
  return all > 0 ? own / all : 0;
}

double meanWeight(const SizeAsk& ask, std::size_t panel) {
  return (ask.across.weights[panel] + ask.down.weights[panel]) / 2;
}

/// Raises the dominant panel's weight until its share is just enough. The share grows with the
/// weight (see sizing.cpp), so: regula falsi, with a bisection now and then, between a weight
/// that is too small and one that is large enough. The first guess is the closed form's.
class ShareSearch {
 public:
  ShareSearch(const FlatTree& tree, const Rect& space, SizeAsk ask, std::size_t dominant,
              double leastShare)
      : tree_(tree), space_(space), ask_(ask), dominant_(dominant), asked_(leastShare) {
    const double reachable = std::min(asked_, 0.95);
    double others = 0;
    for (std::size_t i = 0; i < static_cast<std::size_t>(tree.panels); ++i)
      if (i != dominant) others += meanWeight(ask, i);
    guess_ = std::log(others * reachable / (1 - reachable)) + kGuessAbove;
    low_.logWeight = std::log(meanWeight(ask, dominant));
    most_ = std::max(low_.logWeight, guess_ + std::log(kMostOdds));
  }

  Boxes run(const Boxes& first) {
    low_.excess = shareOf(tree_, first, dominant_) - asked_;
    Boxes boxes = first;
    double next = std::clamp(guess_, low_.logWeight, most_);
    for (int step = 0; step < kShareSteps; ++step) {
      boxes = tryWeight(next);
      const double excess = shareOf(tree_, boxes, dominant_) - asked_;
      if (excess >= 0 && excess <= kShareTolerance * asked_) break;
      if (excess < 0 && next >= most_) break;
      (excess < 0 ? low_ : high_.emplace()) = {next, excess};
      next = nextWeight(step);
    }
    return boxes;
  }

 private:
  struct Trial {
    double logWeight = 0, excess = 0;  ///< share − asked share
  };

  Boxes tryWeight(double logWeight) {
    ask_.setWeight(dominant_, std::exp(logWeight));
    return placeBoxes(tree_, space_, ask_);
  }

  double nextWeight(int step) const {
    if (!high_) return std::min(most_, low_.logWeight + kStride);
    const double width = high_->logWeight - low_.logWeight;
    if (step % 4 == 3) return low_.logWeight + width / 2;
    const double aim = kShareTolerance / 2 * asked_ - low_.excess;
    return low_.logWeight + width * std::min(1.0, aim / (high_->excess - low_.excess));
  }

  const FlatTree& tree_;
  const Rect& space_;
  SizeAsk ask_;
  std::size_t dominant_;
  double asked_;
  double guess_ = 0, most_ = 0;  ///< logarithms of weights
  Trial low_;
  std::optional<Trial> high_;
};

}  // namespace

SizeAsk::SizeAsk(const std::vector<PanelWish>& wishes, double gutterAcross, double gutterDown) {
  across.axis = Axis::Across;
  down.axis = Axis::Down;
  across.gutter = gutterAcross;
  down.gutter = gutterDown;
  for (std::size_t i = 0; i < wishes.size(); ++i) {
    const double weight = std::max(wishes[i].weight, 1e-9), lean = leanFor(wishes[i].aspect);
    across.weights[i] = weight * (1 + lean);
    down.weights[i] = weight * (1 - lean);
    across.least[i] = std::max(0.0, wishes[i].leastWidth);
    down.least[i] = std::max(0.0, wishes[i].leastHeight);
  }
}

void SizeAsk::setWeight(std::size_t panel, double weight) {
  const double mean = (across.weights[panel] + down.weights[panel]) / 2;
  across.weights[panel] *= weight / mean;
  down.weights[panel] *= weight / mean;
}

Boxes placeBoxes(const FlatTree& tree, const Rect& space, const SizeAsk& ask) {
  Boxes boxes;
  Placing(tree, ask, boxes).place(space);
  return boxes;
}

Boxes placeBoxes(const FlatTree& tree, const Rect& space, SizeAsk ask, std::size_t dominant,
                 double leastShare) {
  Boxes boxes = placeBoxes(tree, space, ask);
  if (tree.panels < 2 || leastShare <= 0) return boxes;
  if (shareOf(tree, boxes, dominant) >= leastShare) return boxes;
  return ShareSearch(tree, space, ask, dominant, leastShare).run(boxes);
}

std::vector<Rect> panelBoxes(const FlatTree& tree, const Boxes& boxes) {
  std::vector<Rect> panels(static_cast<std::size_t>(tree.panels));
  for (int node = 0; node < tree.count; ++node)
    if (tree[node].panel >= 0)
      panels[static_cast<std::size_t>(tree[node].panel)] =
          boxes.nodes[static_cast<std::size_t>(node)];
  return panels;
}

}  // namespace tw
