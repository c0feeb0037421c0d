// From all trees to a few hundred layouts worth staging.
//
//   1. Every tree × treatment is laid out and pays the layout rules (about 20 µs each, all
//      threads; only the cost is kept).
//   2. The cheapest few thousand are laid out again and pay for reading order.
//   3. Going up in cost, a layout is kept unless it is the same as, or too near to, one kept
//      before with the same treatment; each treatment has its own quota, so that treatments are
//      judged by their pictures later and not squeezed out here.
//
// The seed nudges the costs by up to kNudge, so another seed looks at other arrangements where
// costs are close. Memory: one float per tree and treatment.
#include "compose/layout_search.h"

#include <algorithm>
#include <array>
#include <limits>
#include <set>

#include "base/parallel.h"
#include "base/random.h"
#include "geometry/polygon.h"

namespace tw {

namespace {

constexpr std::array kTreatments = {Treatment::Plain, Treatment::Bled, Treatment::Ground,
                                    Treatment::Slanted};
constexpr std::size_t kReadPerKept = 10;  // layouts whose order is read, per layout kept
constexpr double kNudge = 0.04;           // of the cost, by the seed
constexpr std::size_t kBlock = 256;       // trees per piece of parallel work
constexpr float kNone = std::numeric_limits<float>::infinity();

struct TreeSet {
  TreeList all;     // over every panel
  TreeList insets;  // over all but the dominant, for Ground
  const PackedTree* tree(Treatment treatment, std::size_t i) const {
    const auto& list = treatment == Treatment::Ground ? insets.trees : all.trees;
    return i < list.size() ? &list[i] : nullptr;
  }
};

struct Slot {
  float cost;
  std::uint32_t tree;
  std::uint8_t treatment;
};

double nudge(std::uint64_t seed, std::size_t index) {
  return 1 + kNudge * Random(seed * 0x9E3779B97F4A7C15u + index).uniform();
}

class Search {
 public:
  Search(const PageCase& page, const RuleBook& book, std::uint64_t seed, unsigned threads,
         Progress& progress, const PinsMet& pins)
      : page_(page),
        book_(book),
        seed_(seed),
        threads_(threads),
        progress_(progress),
        treatment_(pins.treatment),
        request_(page.arrangeRequest()) {
    const int n = static_cast<int>(page.panels.size());
    if (pins.tree) {
      trees_.all.trees = trees_.insets.trees = {*pins.tree};
      trees_.all.counted = treeCount(n);
      return;
    }
    trees_.all = enumerateTrees(n, progress);
    if (page.dominant && n > 1) trees_.insets = enumerateTrees(n - 1, progress);
  }

  LayoutSearch run(std::size_t keep) {
    std::vector<Slot> slots = payAll();
    LayoutSearch out;
    out.counted = trees_.all.counted;
    out.exhaustive = trees_.all.exhaustive;
    out.sized = slots.size();
    out.kept = keepUnlike(readCheapest(slots, keep * kReadPerKept), keep);
    return out;
  }

 private:
  bool isAllowed(Treatment treatment) const { return !treatment_ || *treatment_ == treatment; }

  /// Of `all` layouts, those that one treatment may take.
  std::size_t quota(std::size_t all) const { return treatment_ ? all : all / kTreatments.size(); }

  std::optional<Layout> layout(const Slot& slot) const {
    const Treatment treatment = kTreatments[slot.treatment];
    return layOut(request_, *trees_.tree(treatment, slot.tree), treatment);
  }

  float pay(std::size_t tree, std::size_t treatment) const {
    if (!isAllowed(kTreatments[treatment])) return kNone;
    const PackedTree* packedTree = trees_.tree(kTreatments[treatment], tree);
    if (packedTree == nullptr) return kNone;
    const auto laid = layOut(request_, *packedTree, kTreatments[treatment]);
    if (!laid) return kNone;
    return static_cast<float>(layoutCosts(*laid, page_, book_).sum() *
                              nudge(seed_, tree * kTreatments.size() + treatment));
  }

  std::vector<Slot> payAll() {
    const std::size_t trees = std::max(trees_.all.trees.size(), trees_.insets.trees.size());
    std::vector<float> costs(trees * kTreatments.size(), kNone);
    const std::size_t blocks = (trees + kBlock - 1) / kBlock;
    parallelFor(blocks, threads_, [&](std::size_t block) {
      if (progress_.isStopped()) return;
      for (std::size_t t = block * kBlock; t < std::min(trees, (block + 1) * kBlock); ++t)
        for (std::size_t k = 0; k < kTreatments.size(); ++k)
          costs[t * kTreatments.size() + k] = pay(t, k);
      progress_.tell("arranging", static_cast<double>(block + 1) / static_cast<double>(blocks));
    });
    std::vector<Slot> slots;
    for (std::size_t i = 0; i < costs.size(); ++i)
      if (costs[i] < kNone)
        slots.push_back({costs[i], static_cast<std::uint32_t>(i / kTreatments.size()),
                         static_cast<std::uint8_t>(i % kTreatments.size())});
    return slots;
  }

  /// The cheapest of each treatment with their reading order paid, cheapest first.
  std::vector<LayoutCandidate> readCheapest(std::vector<Slot>& slots, std::size_t most) {
    std::sort(slots.begin(), slots.end(), [](const Slot& a, const Slot& b) {
      if (a.cost != b.cost) return a.cost < b.cost;
      return a.tree != b.tree ? a.tree < b.tree : a.treatment < b.treatment;
    });
    std::array<std::size_t, kTreatments.size()> taken{};
    std::erase_if(slots, [&](const Slot& s) { return taken[s.treatment]++ >= quota(most); });
    std::vector<LayoutCandidate> out(slots.size());
    parallelFor(slots.size(), threads_, [&](std::size_t i) {
      if (!progress_.isStopped()) out[i] = candidate(slots[i]);
    });
    std::stable_sort(
        out.begin(), out.end(),
        [](const LayoutCandidate& a, const LayoutCandidate& b) { return a.cost < b.cost; });
    return out;
  }

  LayoutCandidate candidate(const Slot& slot) const {
    LayoutCandidate out;
    out.layout = *layout(slot);
    std::vector<Polygon> outlines;
    std::vector<int> layer;
    const bool ground = out.layout.treatment == Treatment::Ground;
    for (const LayoutPanel& panel : out.layout.panels) {
      outlines.push_back(panel.outline);
      if (ground) layer.push_back(panel.ground ? 0 : 1);
    }
    out.order = readOrder(outlines, page_.brief.direction, layer);
    out.cost =
        slot.cost + book_.weight(RuleId::ReadingOrder) * cost::readingOrder(out.order.followed);
    return out;
  }

  std::vector<LayoutCandidate> keepUnlike(std::vector<LayoutCandidate> ranked, std::size_t keep) {
    std::vector<LayoutCandidate> out;
    std::set<std::uint64_t> seen;
    std::array<std::size_t, kTreatments.size()> taken{};
    for (LayoutCandidate& c : ranked) {
      std::size_t& mine = taken[static_cast<std::size_t>(c.layout.treatment)];
      if (mine >= quota(keep) || c.layout.panels.empty()) continue;
      if (!seen.insert(fingerprint(c.layout)).second || isNearOne(out, c.layout)) continue;
      ++mine;
      out.push_back(std::move(c));
    }
    return out;
  }

  bool isNearOne(const std::vector<LayoutCandidate>& kept, const Layout& layout) const {
    return std::any_of(kept.begin(), kept.end(), [&](const LayoutCandidate& other) {
      return other.layout.treatment == layout.treatment &&
             unlikeness(other.layout, layout, request_.sheet) < kTooNear;
    });
  }

  const PageCase& page_;
  const RuleBook& book_;
  std::uint64_t seed_;
  unsigned threads_;
  Progress& progress_;
  std::optional<Treatment> treatment_;  ///< the only one
  ArrangeRequest request_;
  TreeSet trees_;
};

}  // namespace

double unlikeness(const Layout& a, const Layout& b, const Sheet& sheet) {
  double sum = 0;
  for (std::size_t i = 0; i < a.panels.size(); ++i) {
    const Rect p = bounds(a.panels[i].outline), q = bounds(b.panels[i].outline);
    sum += (p.centre() - q.centre()).length() + std::abs(p.width() - q.width()) / 2 +
           std::abs(p.height() - q.height()) / 2;
  }
  const double diagonal = std::hypot(sheet.trimWidth, sheet.trimHeight);
  return std::min(1.0, sum / static_cast<double>(a.panels.size()) / (diagonal / 4));
}

LayoutSearch searchLayouts(const PageCase& page, const RuleBook& book, std::uint64_t seed,
                           unsigned threads, std::size_t keep, Progress& progress,
                           const PinsMet& pins) {
  return Search(page, book, seed, threads, progress, pins).run(keep);
}

}  // namespace tw
