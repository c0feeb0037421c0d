// From a page to ranked roughs.
//
//   1. layout_search.cpp sizes every tree × treatment and keeps kStaged promising, unlike layouts.
//   2. staging_table.cpp solves the staging variants of each beat for the shapes those need.
//   3. layout_staging.cpp finds the exactly cheapest chain of variants through each layout's
//   panels.
//   4. The most promising pages (shortlist.cpp) are solved for their exact shapes, rendered,
//      lettered and judged by the full score card.
//   5. choose_different.cpp returns roughs that are good and unlike each other.
//
// The artist's pins (pins_met.cpp) narrow steps 1 to 3 to what is pinned. Roughs that new ones are
// to be unlike count in steps 4 and 5 as chosen already, and none of them comes back.
//
// What it does badly: copy is placed only in step 4, so a layout whose balloons turn out not to
// fit is not tried again with other stagings. Step 3 is exact only for the estimates of the quick
// measures; step 4 pays by the exact ones and re-ranks.
#include "compose/compose.h"

#include <fmt/format.h>

#include <algorithm>
#include <atomic>
#include <iterator>

#include "base/parallel.h"
#include "compose/choose_different.h"
#include "compose/finish.h"
#include "compose/layout_of.h"
#include "compose/layout_search.h"
#include "compose/layout_staging.h"
#include "compose/rough_names.h"
#include "compose/shortlist.h"

namespace tw {

namespace {

constexpr std::size_t kStaged = 160;
constexpr std::size_t kFinishedPerKept = 4;

/// Layouts staged, cheapest first. `wanted` in all: where there are fewer layouts each is staged in
/// several ways.
std::vector<StagedLayout> stageAll(const PageCase& page, const Workshop& workshop,
                                   const LayoutSearch& search, const PinsMet& pins,
                                   std::size_t wanted, unsigned threads, Progress& progress) {
  std::vector<const Layout*> layouts;
  for (const LayoutCandidate& candidate : search.kept) layouts.push_back(&candidate.layout);
  StagingTable table(page, workshop.stager, pins);
  table.prepare(layouts, threads, progress);
  const std::size_t ways = pins.arrangesFreely() ? 1
                                                 : (wanted + layouts.size() - 1) /
                                                       std::max<std::size_t>(1, layouts.size());
  std::vector<std::vector<StagedLayout>> staged(layouts.size());
  parallelFor(layouts.size(), threads, [&](std::size_t i) {
    if (progress.isStopped()) return;
    staged[i] = LayoutStaging(page, workshop.rules, table, *layouts[i]).several(ways);
    for (StagedLayout& one : staged[i]) {
      one.layout = i;
      one.cost += search.kept[i].cost;
    }
  });
  std::vector<StagedLayout> out;
  for (auto& list : staged) std::ranges::move(list, std::back_inserter(out));
  std::ranges::stable_sort(out, {}, &StagedLayout::cost);
  return out;
}

std::vector<Measured> finishAll(const PageCase& page, const Workshop& workshop,
                                const LayoutSearch& search, const PinsMet& pins,
                                const std::vector<StagedLayout>& pages, unsigned threads,
                                Progress& progress) {
  std::vector<Measured> out(pages.size());
  std::atomic<std::size_t> done{0};
  parallelFor(pages.size(), threads, [&](std::size_t i) {
    if (progress.isStopped()) return;
    const LayoutCandidate& candidate = search.kept[pages[i].layout];
    out[i] = finishRough(page, workshop, candidate.layout, candidate.order, pages[i].choices, pins);
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
  for (std::size_t i = 0; i < roughs.size(); ++i) roughs[i].name = roughNameAt(i);
}

/// The layouts within the pins; a treatment that gives none is given up.
LayoutSearch searchWithin(const PageCase& page, const RuleBook& book, const ComposeOptions& options,
                          PinsMet& pins, Progress& progress) {
  const auto search = [&] {
    return searchLayouts(page, book, options.seed, options.threads, kStaged, progress, pins);
  };
  LayoutSearch out = search();
  if (!out.kept.empty() || !pins.treatment || progress.isStopped()) return out;
  giveUpTreatment(pins);
  return search();
}

/// The roughs to be unlike, with what is needed to compare: their shapes and stagings. Those of
/// another state of the script are told and left out.
std::vector<Measured> shapesOf(const PageCase& page, const std::vector<Rough>& roughs,
                               std::vector<std::string>& notes) {
  std::vector<Measured> out;
  for (const Rough& rough : roughs) {
    if (!showsBeatsOf(rough, page)) {
      notes.push_back(
          fmt::format("Rough {} shows another state of the script: nothing can be "
                      "unlike it.",
                      rough.name));
      continue;
    }
    Measured& m = out.emplace_back();
    m.rough = rough;
    m.layout = layoutOf(rough, page);
  }
  return out;
}

/// Leaves out pages that are among `there`, and all but the best of pages that are the same.
void keepNew(std::vector<Measured>& finished, const std::vector<Measured>& there) {
  std::vector<Measured> out;
  const auto isIn = [](const std::vector<Measured>& list, const Measured& m) {
    return std::ranges::any_of(list, [&](const Measured& other) { return isSamePage(m, other); });
  };
  for (Measured& m : finished)
    if (!isIn(there, m) && !isIn(out, m)) out.push_back(std::move(m));
  finished = std::move(out);
}

/// What the pins and the roughs to be unlike leave undone, in words.
void tellFew(Composed& out, const ComposeOptions& options, const PinsMet& pins) {
  const std::size_t found = out.roughs.size();
  if (found >= static_cast<std::size_t>(options.keep)) return;
  if (pins.arrangesFreely() && options.unlike.empty()) return;
  out.unkept.push_back(fmt::format(
      "Only {} of the {} roughs asked for: what is pinned{} leaves no more that differ.", found,
      options.keep, options.unlike.empty() ? "" : " and what they are to be unlike"));
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
  const double spread = workshop.rules.spreadOfRoughs();
  PinsMet pins = pinsMet(*pageCase);
  const LayoutSearch search = searchWithin(*pageCase, workshop.rules, options, pins, progress);
  if (progress.isStopped()) return stopped();
  const std::vector<Measured> unlike = shapesOf(*pageCase, options.unlike, pins.unkept);
  const std::size_t wanted = (keep + unlike.size()) * kFinishedPerKept;
  const auto staged =
      stageAll(*pageCase, workshop, search, pins, wanted, options.threads, progress);
  if (progress.isStopped()) return stopped();
  auto finished = finishAll(*pageCase, workshop, search, pins,
                            shortlist(staged, search, wanted, {&pageCase->sheet, spread, &unlike}),
                            options.threads, progress);
  if (progress.isStopped()) return stopped();
  keepNew(finished, unlike);
  Composed out;
  out.page = page.number;
  out.counted = search.counted;
  out.sized = search.sized;
  out.staged = staged.size();
  out.exhaustive = search.exhaustive;
  const std::vector<std::size_t> chosen =
      chooseDifferent(finished, pageCase->sheet, keep, spread, unlike);
  parallelFor(chosen.size(), options.threads,
              [&](std::size_t i) { measureFully(finished[chosen[i]], *pageCase, workshop); });
  for (const std::size_t i : chosen) out.roughs.push_back(std::move(finished[i].rough));
  nameRoughs(out.roughs);
  if (!out.roughs.empty()) out.unmet = missedDemands(out.roughs.front(), workshop.rules);
  out.unkept = std::move(pins.unkept);
  tellFew(out, options, pins);
  return out;
}

}  // namespace tw
