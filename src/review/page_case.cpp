#include "review/page_case.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace tw {

namespace {

// Balloons rarely pack tighter than this share of the upper part of a panel. Common practice:
// copy keeps to the upper third; facts: production §4 caps one balloon at 40–50 % of its panel.
constexpr double kCopyOfPanel = 0.35;

bool hasFigure(const Beat& beat, const std::string& who) {
  return std::any_of(beat.figures.begin(), beat.figures.end(),
                     [&](const BeatFigure& f) { return f.who == who; });
}

std::optional<std::size_t> dominantOf(const std::vector<Beat>& beats, const Brief& brief) {
  for (std::size_t i = 0; i < beats.size(); ++i)
    if (brief.dominantBeat.empty() ? beats[i].dominant : beats[i].id == brief.dominantBeat)
      return i;
  return std::nullopt;
}

/// A panel must at least hold its words: its weight grows until its share of the live area would.
double weightFor(const PanelCase& panel, double liveArea, double weightSum) {
  const double wanted = panel.copy.areaMm2 / kCopyOfPanel / liveArea * weightSum;
  return std::max(panel.beat.weight, wanted);
}

PanelCase panelCaseOf(const Beat& beat, bool dominant, const Brief& brief,
                      const Letterer& letterer) {
  PanelCase out;
  out.beat = beat;
  out.focus = focusOf(beat, brief);
  out.dominant = dominant;
  out.briefFocus = !out.focus.empty() && (brief.focus.empty() || out.focus == brief.focus);
  out.aspectWish = aspectWishOf(beat);
  out.copy = letterer.wanted(beat.copy);
  if (out.briefFocus) out.leastHeadMm = brief.leastHeadMm;
  out.largest = brief.largestInPanel && out.briefFocus;
  out.whole = dominant && (brief.wholeFigure || brief.liftable) && !out.focus.empty();
  out.liftable = dominant && brief.liftable && !out.focus.empty();
  return out;
}

}  // namespace

std::string focusOf(const Beat& beat, const Brief& brief) {
  if (!brief.focus.empty() && hasFigure(beat, brief.focus)) return brief.focus;
  return beat.figures.empty() ? std::string() : beat.figures.front().who;
}

double aspectWishOf(const Beat& beat) {
  const std::size_t figures = beat.figures.size();
  const ShotSize shot = beat.shot.value_or(figures == 0 ? ShotSize::ExtremeLong : ShotSize::Medium);
  switch (shot) {
    case ShotSize::ExtremeCloseUp:
      return 1.6;
    case ShotSize::CloseUp:
      return figures > 1 ? 1.6 : 1.0;
    case ShotSize::MediumCloseUp:
    case ShotSize::Medium:
      return figures > 1 ? 1.0 + 0.25 * static_cast<double>(figures) : 0.9;
    case ShotSize::MediumLong:
      return figures > 1 ? 1.2 : 0.75;
    case ShotSize::Long:
      return figures > 1 ? 1.3 : 0.7;
    case ShotSize::VeryLong:
      return 1.6;
    case ShotSize::ExtremeLong:
      return 2.2;
  }
  return 0;
}

namespace {

Result<std::vector<ContinuityFinding>> continuityOnPage(const Job& job, const Page& page) {
  const auto words = LookWords::load();
  if (!words) return tl::unexpected(words.error());
  const auto wardrobe = Wardrobe::load();
  if (!wardrobe) return tl::unexpected(wardrobe.error());
  std::vector<ContinuityFinding> found = continuityOf(job, StoryTime(job), *words, *wardrobe);
  std::erase_if(found, [&](const ContinuityFinding& f) { return f.here.page != page.number; });
  return found;
}

}  // namespace

Result<PageCase> pageCaseOf(const Job& job, const Page& page, const Letterer& letterer) {
  PageCase out;
  out.job = &job;
  out.page = &page;
  out.sheet = job.sheetFor(page);
  out.rightHand = Job::isRightHand(page);
  out.brief = page.brief;
  const std::vector<Beat> beats = page.correctedBeats();
  if (beats.empty())
    return badInput("The page has no panels.", {.page = page.number},
                    "Add panels to the script and import it again.");
  if (beats.size() > kMostPanelsOnPage)
    return badInput(fmt::format("The page has {} panels; at most {} can be arranged.", beats.size(),
                                kMostPanelsOnPage),
                    {.page = page.number}, "Split the page with the writer.");
  out.dominant = dominantOf(beats, page.brief);
  for (std::size_t i = 0; i < beats.size(); ++i)
    out.panels.push_back(panelCaseOf(beats[i], out.dominant == i, page.brief, letterer));
  double beatSum = 0, sum = 0;
  for (const PanelCase& panel : out.panels) beatSum += panel.beat.weight;
  const double liveArea = out.sheet.liveRect(out.rightHand).area();
  for (PanelCase& panel : out.panels)
    sum += (panel.weightShare = weightFor(panel, liveArea, beatSum));
  for (PanelCase& panel : out.panels) panel.weightShare /= sum;
  auto continuity = continuityOnPage(job, page);
  if (!continuity) return tl::unexpected(continuity.error());
  out.continuity = std::move(*continuity);
  return out;
}

ArrangeRequest PageCase::arrangeRequest() const {
  ArrangeRequest out;
  out.sheet = sheet;
  out.rightHand = rightHand;
  out.direction = brief.direction;
  out.dominant = dominant;
  out.leastDominantShare = brief.leastDominantShare;
  out.bleeds = brief.bleeds;
  for (const KeepClear& zone : brief.keepClear) out.keepClear.push_back(zone.rect);
  for (const PanelCase& panel : panels)
    out.wishes.push_back(
        {panel.weightShare, panel.copy.leastWidthMm, panel.copy.leastHeightMm, panel.aspectWish});
  return out;
}

}  // namespace tw
