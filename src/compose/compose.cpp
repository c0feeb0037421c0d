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
// to be unlike count in steps 4 and 5 as chosen already, none of them comes back, and their
// arrangements are left out after step 1, or come last where there are too few others.
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

/// For each layout of the search: has one of the roughs that arrangement?
std::vector<bool> sharedWith(const std::vector<Measured>& unlike, const LayoutSearch& search,
                             const Sheet& sheet) {
  std::vector<bool> out;
  for (const LayoutCandidate& candidate : search.kept)
    out.push_back(std::ranges::any_of(unlike, [&](const Measured& other) {
      return sharesArrangement(candidate.layout, other.layout, sheet);
    }));
  return out;
}

/// Leaves out the arrangements of the roughs to be unlike, when enough others are there.
void keepOtherArrangements(LayoutSearch& search, const std::vector<Measured>& unlike,
                           const Sheet& sheet, std::size_t keep) {
  const std::vector<bool> shared = sharedWith(unlike, search, sheet);
  if (static_cast<std::size_t>(std::ranges::count(shared, false)) < keep) return;
  std::vector<LayoutCandidate> out;
  for (std::size_t i = 0; i < shared.size(); ++i)
    if (!shared[i]) out.push_back(std::move(search.kept[i]));
  search.kept = std::move(out);
}

std::vector<PageChoices> choicesOf(const std::vector<Measured>& roughs) {
  std::vector<PageChoices> out;
  for (const Measured& m : roughs) {
    PageChoices& page = out.emplace_back();
    for (const RoughPanel& panel : m.rough.panels) page.push_back(panel.staging.choice);
  }
  return out;
}

/// Layouts staged, cheapest first. `wanted` in all: where there are fewer layouts each is staged in
/// several ways.
std::vector<StagedLayout> stageAll(const PageCase& page, const Workshop& workshop,
                                   const LayoutSearch& search, const PinsMet& pins,
                                   std::size_t wanted, const std::vector<Measured>& unlike,
                                   unsigned threads, Progress& progress) {
  std::vector<const Layout*> layouts;
  for (const LayoutCandidate& candidate : search.kept) layouts.push_back(&candidate.layout);
  StagingTable table(page, workshop.stager, pins);
  table.prepare(layouts, threads, progress);
  const std::size_t ways = pins.arrangesFreely() ? 1
                                                 : (wanted + layouts.size() - 1) /
                                                       std::max<std::size_t>(1, layouts.size());
  const std::vector<PageChoices> shown = choicesOf(unlike);
  std::vector<std::vector<StagedLayout>> staged(layouts.size());
  parallelFor(layouts.size(), threads, [&](std::size_t i) {
    if (progress.isStopped()) return;
    staged[i] = LayoutStaging(page, workshop.rules, table, *layouts[i]).several(ways, shown);
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

/// The pages worth drawing; those of other arrangements than the roughs to be unlike go first.
std::vector<StagedLayout> worthDrawing(const std::vector<StagedLayout>& staged,
                                       const LayoutSearch& search, std::size_t most,
                                       const ToBeUnlike& unlike) {
  const std::vector<bool> shared = sharedWith(*unlike.roughs, search, *unlike.sheet);
  std::vector<StagedLayout> others, same;
  for (const StagedLayout& one : staged) (shared[one.layout] ? same : others).push_back(one);
  std::vector<StagedLayout> out = shortlist(others, search, most, unlike);
  std::ranges::move(shortlist(same, search, most - out.size(), unlike), std::back_inserter(out));
  return out;
}

/// Moves the roughs to return out of `finished`: good ones unlike each other, and where other
/// arrangements are too few, those that lie farthest from the roughs to be unlike.
std::vector<Measured> chosenOf(std::vector<Measured>& finished, std::size_t keep,
                               const ToBeUnlike& unlike, std::vector<std::string>& notes) {
  constexpr double kFarthest = 1e6;  // no score outweighs being unlike
  std::vector<Measured> others, same, out, there = *unlike.roughs;
  for (Measured& m : finished) {
    const bool shared = std::ranges::any_of(*unlike.roughs, [&](const Measured& other) {
      return sharesArrangement(m.layout, other.layout, *unlike.sheet);
    });
    (shared ? same : others).push_back(std::move(m));
  }
  for (const std::size_t i : chooseDifferent(others, *unlike.sheet, keep, unlike.spread, there))
    out.push_back(std::move(others[i]));
  const std::size_t fresh = out.size();
  if (fresh == keep || same.empty()) return out;
  there.insert(there.end(), out.begin(), out.end());
  for (const std::size_t i : chooseDifferent(same, *unlike.sheet, keep - fresh, kFarthest, there))
    out.push_back(std::move(same[i]));
  notes.push_back(fmt::format(
      "Only {} of the {} roughs found {} another arrangement than those they are to be unlike: "
      "there are no more. The others differ by treatment or pictures.",
      fresh, out.size(), fresh == 1 ? "has" : "have"));
  return out;
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
  LayoutSearch search = searchWithin(*pageCase, workshop.rules, options, pins, progress);
  if (progress.isStopped()) return stopped();
  const std::vector<Measured> unlike = shapesOf(*pageCase, options.unlike, pins.unkept);
  const ToBeUnlike toBeUnlike{&pageCase->sheet, spread, &unlike};
  keepOtherArrangements(search, unlike, pageCase->sheet, keep);
  const std::size_t wanted = (keep + unlike.size()) * kFinishedPerKept;
  const auto staged =
      stageAll(*pageCase, workshop, search, pins, wanted, unlike, options.threads, progress);
  if (progress.isStopped()) return stopped();
  auto finished =
      finishAll(*pageCase, workshop, search, pins, worthDrawing(staged, search, wanted, toBeUnlike),
                options.threads, progress);
  if (progress.isStopped()) return stopped();
  keepNew(finished, unlike);
  Composed out;
  out.page = page.number;
  out.counted = search.counted;
  out.sized = search.sized;
  out.staged = staged.size();
  out.exhaustive = search.exhaustive;
  std::vector<Measured> chosen = chosenOf(finished, keep, toBeUnlike, pins.unkept);
  parallelFor(chosen.size(), options.threads,
              [&](std::size_t i) { measureFully(chosen[i], *pageCase, workshop); });
  for (Measured& m : chosen) out.roughs.push_back(std::move(m.rough));
  nameRoughs(out.roughs);
  if (!out.roughs.empty()) out.unmet = missedDemands(out.roughs.front(), workshop.rules);
  out.unkept = std::move(pins.unkept);
  tellFew(out, options, pins);
  return out;
}

}  // namespace tw
