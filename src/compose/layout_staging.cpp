// Staging one layout.
//
// 1. Each variant pays for its panel, with the arrival of its lead among these very panels, and
//    each two running pay for their change: chain.cpp finds the exactly cheapest chains.
// 2. A page-wide term, rhythm, picks among the kChains best.
// 3. For more than one staging of the same layout, choices like those taken before cost what
//    choosing unlike roughs gives for unlike stagings (choose_different.cpp), and the chains are
//    found again. The extra never reaches the cost that is told.
#include "compose/layout_staging.h"

#include <algorithm>
#include <limits>

#include "geometry/polygon.h"
#include "read/rhythm.h"

namespace tw {

namespace {

constexpr std::size_t kChains = 4;
constexpr std::size_t kRounds = 3;  // that may find nothing new, per staging wanted

ArrivalField fieldOf(const PageCase& page, const Layout& layout) {
  std::vector<Polygon> outlines;
  std::vector<bool> ground;
  for (const LayoutPanel& panel : layout.panels) {
    outlines.push_back(panel.outline);
    ground.push_back(panel.ground);
  }
  return {std::move(outlines), page.sheet.trimRect(), page.brief.direction, std::move(ground)};
}

}  // namespace

bool stagedAlike(const StagingChoice& a, const StagingChoice& b) {
  return a.shot == b.shot && a.mirrored == b.mirrored && (a.sideDeg < 0) == (b.sideDeg < 0) &&
         a.eye == b.eye;
}

LayoutStaging::LayoutStaging(const PageCase& page, const RuleBook& book, const StagingTable& table,
                             const Layout& layout)
    : page_(page), book_(book), layout_(layout), field_(fieldOf(page, layout)) {
  for (std::size_t i = 0; i < layout.panels.size(); ++i) variants_.push_back(&table.of(i, layout));
}

double LayoutStaging::unaryCost(std::size_t panel, const Variant& v) const {
  const Rect frame = frameOf(layout_.panels[panel].outline);
  Arrival arrival;
  if (v.leadStrength > 0) {
    const Point from{frame.min.x + v.focus.x * frame.width(),
                     frame.min.y + v.focus.y * frame.height()};
    arrival = field_.of({from, v.lead, v.leadStrength, {}}, panel);
  }
  double sum = 0;
  payPanel(page_.panels[panel], quickNumbers(page_.panels[panel], v, frame, arrival), book_,
           [&](RuleId, double cost) { sum += cost; });
  return sum;
}

ChainProblem LayoutStaging::problem() const {
  ChainProblem out;
  for (std::size_t i = 0; i < variants_.size(); ++i) {
    std::vector<double>& costs = out.unary.emplace_back();
    for (const Variant& v : *variants_[i]) costs.push_back(unaryCost(i, v));
  }
  for (std::size_t i = 1; i < variants_.size(); ++i) out.pair.push_back(pairCosts(i));
  return out;
}

std::vector<double> LayoutStaging::pairCosts(std::size_t i) const {
  std::vector<double> out;
  out.reserve(variants_[i - 1]->size() * variants_[i]->size());
  for (const Variant& a : *variants_[i - 1])
    for (const Variant& b : *variants_[i]) {
      double sum = 0;
      payPair(pairOf(page_.panels[i - 1], a, page_.panels[i], b), book_,
              [&](RuleId, double cost) { sum += cost; });
      out.push_back(sum);
    }
  return out;
}

double LayoutStaging::rhythmCost(const Chain& chain) const {
  std::vector<ShotSize> shots;
  std::vector<double> areas;
  for (std::size_t i = 0; i < chain.choice.size(); ++i) {
    shots.push_back(variant(i, chain.choice[i]).choice.shot);
    areas.push_back(area(layout_.panels[i].outline));
  }
  const Rhythm rhythm = rhythmOf(shots, areas);
  return book_.weight(RuleId::Rhythm) * cost::rhythm(rhythm.longestRun, rhythm.shotVariety);
}

StagedLayout LayoutStaging::staged(const Chain& chain, double cost) const {
  StagedLayout out;
  out.cost = cost;
  for (std::size_t i = 0; i < chain.choice.size(); ++i)
    out.choices.push_back(variant(i, chain.choice[i]).choice);
  return out;
}

StagedLayout LayoutStaging::best(const ChainProblem& asked) const {
  StagedLayout out;
  out.cost = std::numeric_limits<double>::infinity();
  for (const Chain& chain : cheapestChains(asked, kChains)) {
    const double cost = chain.cost + rhythmCost(chain);
    if (cost < out.cost) out = staged(chain, cost);
  }
  return out;
}

namespace {

bool isShown(const StagingChoice& choice, std::size_t panel,
             const std::vector<PageChoices>& shown) {
  return std::ranges::any_of(
      shown, [&](const PageChoices& page) { return stagedAlike(choice, page[panel]); });
}

}  // namespace

std::vector<StagedLayout> LayoutStaging::several(std::size_t most,
                                                 const std::vector<PageChoices>& shown) const {
  for (const auto* list : variants_)
    if (list->empty()) return {};
  ChainProblem asked = problem();
  const double again =
      (1 - kShapesCount) * book_.spreadOfRoughs() / static_cast<double>(variants_.size());
  std::vector<std::vector<double>> extra(variants_.size());
  for (std::size_t i = 0; i < variants_.size(); ++i) {
    extra[i].resize(variants_[i]->size());
    for (std::size_t k = 0; k < variants_[i]->size(); ++k)
      if (isShown((*variants_[i])[k].choice, i, shown)) {
        extra[i][k] += again;
        asked.unary[i][k] += again;
      }
  }
  std::vector<StagedLayout> out;
  for (std::size_t round = 0; out.size() < most && round < kRounds * most; ++round) {
    StagedLayout next = best(asked);
    for (std::size_t i = 0; i < variants_.size(); ++i)
      for (std::size_t k = 0; k < variants_[i]->size(); ++k) {
        const StagingChoice& choice = (*variants_[i])[k].choice;
        if (choice == next.choices[i]) next.cost -= extra[i][k];
        if (!stagedAlike(choice, next.choices[i])) continue;
        extra[i][k] += again;
        asked.unary[i][k] += again;
      }
    if (std::ranges::find(out, next.choices, &StagedLayout::choices) == out.end())
      out.push_back(std::move(next));
  }
  return out;
}

}  // namespace tw
