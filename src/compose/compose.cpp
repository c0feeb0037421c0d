// From a page to ranked roughs.
//
//   1. layout_search.cpp sizes every tree × treatment and keeps kStaged promising, unlike layouts.
//   2. staging_table.cpp solves the staging variants of each beat for the shapes those need.
//   3. For each layout the panels form a chain: what a variant costs in this panel (payPanel,
//      with the arrival of its lead among these very panels) and what two variants running cost
//      (payPair). chain.cpp finds the exactly cheapest chains; a page-wide term (rhythm) picks
//      among the kChains best.
//   4. The kFinished most promising pages are solved for their exact shapes, rendered, lettered
//      and judged by the full score card.
//   5. choose_different.cpp returns roughs that are good and unlike each other.
//
// What it does badly: copy is placed only in step 4, so a layout whose balloons turn out not to
// fit is not tried again with other stagings. Step 3 is exact only for the estimates of the quick
// measures; step 4 pays by the exact ones and re-ranks.
#include "compose/compose.h"

#include <algorithm>
#include <array>
#include <atomic>
#include <limits>

#include "base/parallel.h"
#include "compose/chain.h"
#include "compose/choose_different.h"
#include "compose/finish.h"
#include "compose/layout_search.h"
#include "compose/staging_table.h"
#include "geometry/polygon.h"
#include "read/rhythm.h"

namespace tw {

namespace {

constexpr std::size_t kStaged = 160;
constexpr std::size_t kChains = 4;
constexpr std::size_t kFinishedPerKept = 4;

/// A layout with its best chain.
struct StagedPage {
  std::size_t layout = 0;
  std::vector<StagingChoice> choices;
  double cost = 0;
};

class LayoutStaging {
 public:
  LayoutStaging(const PageCase& page, const RuleBook& book, const StagingTable& table,
                const Layout& layout)
      : page_(page), book_(book), layout_(layout), field_(fieldOf(page, layout)) {
    for (std::size_t i = 0; i < layout.panels.size(); ++i)
      variants_.push_back(&table.of(i, layout));
  }

  std::optional<StagedPage> best() const {
    for (const auto* list : variants_)
      if (list->empty()) return std::nullopt;
    const auto chains = cheapestChains(problem(), kChains);
    StagedPage out;
    out.cost = std::numeric_limits<double>::infinity();
    for (const Chain& chain : chains) {
      const double cost = chain.cost + rhythmCost(chain);
      if (cost >= out.cost) continue;
      out.cost = cost;
      out.choices = choicesOf(chain);
    }
    return out;
  }

 private:
  static ArrivalField fieldOf(const PageCase& page, const Layout& layout) {
    std::vector<Polygon> outlines;
    std::vector<bool> ground;
    for (const LayoutPanel& panel : layout.panels) {
      outlines.push_back(panel.outline);
      ground.push_back(panel.ground);
    }
    return {std::move(outlines), page.sheet.trimRect(), page.brief.direction, std::move(ground)};
  }

  const Variant& variant(std::size_t panel, int choice) const {
    return (*variants_[panel])[static_cast<std::size_t>(choice)];
  }

  double unaryCost(std::size_t panel, const Variant& v) const {
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

  ChainProblem problem() const {
    ChainProblem out;
    for (std::size_t i = 0; i < variants_.size(); ++i) {
      std::vector<double>& costs = out.unary.emplace_back();
      for (const Variant& v : *variants_[i]) costs.push_back(unaryCost(i, v));
    }
    for (std::size_t i = 1; i < variants_.size(); ++i) out.pair.push_back(pairCosts(i));
    return out;
  }

  std::vector<double> pairCosts(std::size_t i) const {
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

  double rhythmCost(const Chain& chain) const {
    std::vector<ShotSize> shots;
    std::vector<double> areas;
    for (std::size_t i = 0; i < chain.choice.size(); ++i) {
      shots.push_back(variant(i, chain.choice[i]).choice.shot);
      areas.push_back(area(layout_.panels[i].outline));
    }
    const Rhythm rhythm = rhythmOf(shots, areas);
    return book_.weight(RuleId::Rhythm) * cost::rhythm(rhythm.longestRun, rhythm.shotVariety);
  }

  std::vector<StagingChoice> choicesOf(const Chain& chain) const {
    std::vector<StagingChoice> out;
    for (std::size_t i = 0; i < chain.choice.size(); ++i)
      out.push_back(variant(i, chain.choice[i]).choice);
    return out;
  }

  const PageCase& page_;
  const RuleBook& book_;
  const Layout& layout_;
  ArrivalField field_;
  std::vector<const std::vector<Variant>*> variants_;
};

std::vector<StagedPage> stageAll(const PageCase& page, const Workshop& workshop,
                                 const LayoutSearch& search, unsigned threads, Progress& progress) {
  std::vector<const Layout*> layouts;
  for (const LayoutCandidate& candidate : search.kept) layouts.push_back(&candidate.layout);
  StagingTable table(page, workshop.stager);
  table.prepare(layouts, threads, progress);
  std::vector<std::optional<StagedPage>> staged(layouts.size());
  parallelFor(layouts.size(), threads, [&](std::size_t i) {
    if (progress.isStopped()) return;
    staged[i] = LayoutStaging(page, workshop.rules, table, *layouts[i]).best();
    if (!staged[i]) return;
    staged[i]->layout = i;
    staged[i]->cost += search.kept[i].cost;
  });
  std::vector<StagedPage> out;
  for (auto& one : staged)
    if (one) out.push_back(std::move(*one));
  std::stable_sort(out.begin(), out.end(),
                   [](const StagedPage& a, const StagedPage& b) { return a.cost < b.cost; });
  return out;
}

/// The cheapest pages, but no treatment more than half of them, so that there is something unlike
/// to choose from.
std::vector<StagedPage> shortlist(const std::vector<StagedPage>& staged, const LayoutSearch& search,
                                  std::size_t most) {
  std::vector<StagedPage> out;
  std::array<std::size_t, 4> taken{};
  for (const StagedPage& one : staged) {
    const auto treatment = static_cast<std::size_t>(search.kept[one.layout].layout.treatment);
    if (out.size() == most || taken[treatment] * 2 >= most) continue;
    ++taken[treatment];
    out.push_back(one);
  }
  return out;
}

std::vector<Measured> finishAll(const PageCase& page, const Workshop& workshop,
                                const LayoutSearch& search, const std::vector<StagedPage>& pages,
                                unsigned threads, Progress& progress) {
  std::vector<Measured> out(pages.size());
  std::atomic<std::size_t> done{0};
  parallelFor(pages.size(), threads, [&](std::size_t i) {
    if (progress.isStopped()) return;
    const LayoutCandidate& candidate = search.kept[pages[i].layout];
    out[i] = finishRough(page, workshop, candidate.layout, candidate.order, pages[i].choices);
    progress.tell("drawing", static_cast<double>(++done) / static_cast<double>(pages.size()));
  });
  std::stable_sort(out.begin(), out.end(), [](const Measured& a, const Measured& b) {
    return a.rough.score < b.rough.score;
  });
  return out;
}

void nameRoughs(std::vector<Rough>& roughs) {
  std::stable_sort(roughs.begin(), roughs.end(),
                   [](const Rough& a, const Rough& b) { return a.score < b.score; });
  for (std::size_t i = 0; i < roughs.size(); ++i)
    roughs[i].name = std::string(1, static_cast<char>('A' + i));
}

}  // namespace

Result<Workshop> Workshop::make(const Job& job, const std::string& rulesFile, Models models) {
  auto stager = Stager::make(job, std::move(models));
  if (!stager) return tl::unexpected(stager.error());
  auto letterer = Letterer::make();
  if (!letterer) return tl::unexpected(letterer.error());
  auto rules = RuleBook::load(rulesFile.empty() ? std::nullopt
                                                : std::optional<std::filesystem::path>(rulesFile));
  if (!rules) return tl::unexpected(rules.error());
  return Workshop{std::move(*stager), std::move(*letterer), std::move(*rules)};
}

Result<Composed> compose(const Job& job, const Page& page, const Workshop& workshop,
                         const ComposeOptions& options, Progress& progress) {
  const auto pageCase = pageCaseOf(job, page, workshop.letterer);
  if (!pageCase) return tl::unexpected(pageCase.error());
  const std::size_t keep = static_cast<std::size_t>(std::clamp(options.keep, 1, 26));
  const LayoutSearch search =
      searchLayouts(*pageCase, workshop.rules, options.seed, options.threads, kStaged, progress);
  if (progress.isStopped()) return stopped();
  const auto staged = stageAll(*pageCase, workshop, search, options.threads, progress);
  if (progress.isStopped()) return stopped();
  auto finished =
      finishAll(*pageCase, workshop, search, shortlist(staged, search, keep * kFinishedPerKept),
                options.threads, progress);
  if (progress.isStopped()) return stopped();
  Composed out;
  out.page = page.number;
  out.counted = search.counted;
  out.sized = search.sized;
  out.staged = staged.size();
  out.exhaustive = search.exhaustive;
  const std::vector<std::size_t> chosen =
      chooseDifferent(finished, pageCase->sheet, keep, workshop.rules.spreadOfRoughs());
  parallelFor(chosen.size(), options.threads,
              [&](std::size_t i) { measureFully(finished[chosen[i]], *pageCase, workshop); });
  for (const std::size_t i : chosen) out.roughs.push_back(std::move(finished[i].rough));
  nameRoughs(out.roughs);
  if (!out.roughs.empty()) out.unmet = missedDemands(out.roughs.front(), workshop.rules);
  return out;
}

}  // namespace tw
