// What a brief asks against what its page and job can give. Each check looks at one demand.
#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <optional>

#include "job/brief_keys.h"
#include "job/field.h"

namespace tw {

namespace {

struct Case {
  const Brief& brief;
  const Page& page;
  const Job& job;
  std::vector<Beat> beats;
  Problems found;

  void add(const char* key, std::string sentence, std::string advice = {}) {
    found.push_back({Cause::BadInput,
                     fmt::format("{}: {}", key, sentence),
                     {.page = page.number},
                     std::move(advice)});
  }
  /// The beat that dominates: the brief's, else the one marked so.
  const Beat* dominant() const {
    for (const Beat& beat : beats)
      if (brief.dominantBeat.empty() ? beat.dominant : beat.id == brief.dominantBeat) return &beat;
    return nullptr;
  }
};

bool isIn(const Beat& beat, const std::string& who) {
  return std::any_of(beat.figures.begin(), beat.figures.end(),
                     [&](const BeatFigure& figure) { return figure.who == who; });
}

void checkNames(Case& c) {
  std::vector<std::string> beats, cast;
  for (const Beat& beat : c.beats) beats.push_back(beat.id);
  for (const Character& character : c.job.cast) cast.push_back(character.id);
  if (!c.brief.dominantBeat.empty() && !c.dominant())
    c.add("dominant", fmt::format("the page has no beat {}.", c.brief.dominantBeat),
          fmt::format("It has: {}.", fmt::join(beats, ", ")));
  if (!c.brief.focus.empty() && !c.job.character(c.brief.focus))
    c.add("focus", fmt::format("{} is not in the cast.", c.brief.focus),
          fmt::format("The cast is: {}.", fmt::join(cast, ", ")));
}

void checkDominant(Case& c) {
  const Brief& b = c.brief;
  if (c.dominant()) {
    if ((b.wholeFigure || b.liftable) && c.dominant()->figures.empty())
      c.add(b.liftable ? "liftable" : "whole",
            fmt::format("nobody is in the dominant beat {}.", c.dominant()->id));
    return;
  }
  if (b.leastDominantShare > 0)
    c.add("dominant-share", "a share is asked for but no beat dominates.", "Set dominant=BEAT.");
  if (b.wholeFigure || b.liftable)
    c.add(b.liftable ? "liftable" : "whole", "no beat dominates.", "Set dominant=BEAT.");
}

/// What is most for the dominant panel when the `others` are as small as the sheet allows: all the
/// rest of the page, as a ground under them has it. No treatment gives more.
double mostShare(const Sheet& sheet, std::size_t others) {
  const double least = sheet.leastPanelWidth * sheet.leastPanelHeight;
  return 1 - static_cast<double>(others) * least / (sheet.trimWidth * sheet.trimHeight);
}

std::string leftForOthers(const Sheet& sheet, double share, std::size_t others) {
  constexpr double kMm2PerCm2 = 100;
  const double least = sheet.leastPanelWidth * sheet.leastPanelHeight;
  return fmt::format(
      "{:.3g} % leaves {:.1f} cm² of the page for {} other panel{}, which need{} {:.1f} cm² at the "
      "sheet's least size ({:g} × {:g} mm).",
      100 * share, (1 - share) * sheet.trimWidth * sheet.trimHeight / kMm2PerCm2, others,
      others == 1 ? "" : "s", others == 1 ? "s" : "",
      static_cast<double>(others) * least / kMm2PerCm2, sheet.leastPanelWidth,
      sheet.leastPanelHeight);
}

void checkShare(Case& c) {
  const double asked = c.brief.leastDominantShare;
  if (asked <= 0 || c.beats.size() < 2) return;
  if (asked >= 1) return c.add("dominant-share", "the other panels would have no area left.");
  const Sheet& sheet = c.job.sheetFor(c.page);
  const std::size_t others = c.beats.size() - 1;
  const double most = mostShare(sheet, others);
  if (asked <= most) return;
  c.add("dominant-share", leftForOthers(sheet, asked, others),
        most > 0.01 ? fmt::format("At most {:.0f} % can be asked.", std::floor(100 * most))
                    : "Ask for fewer panels.");
}

void checkSmallPanels(Case& c) {
  const auto& least = c.brief.leastSmallPanels;
  const auto& most = c.brief.mostSmallPanels;
  if (least && most && *least > *most)
    return c.add("small-panels", fmt::format("{} is more than {}.", *least, *most));
  const int small = static_cast<int>(c.beats.size()) - (c.dominant() ? 1 : 0);
  if ((least && small < *least) || (most && small > *most))
    c.add("small-panels",
          fmt::format("{} to {} are asked for, but the script has {} beats beside the dominant.",
                      least.value_or(0), most.value_or(small), small),
          "Change the range, or join or split beats in the script.");
}

void checkFocus(Case& c) {
  const std::string& who = c.brief.focus;
  if (who.empty()) {
    if (c.brief.leastHeadMm > 0 || c.brief.largestInPanel)
      c.add("focus", "a prominence is asked for, but of nobody.", "Set focus=CHARACTER.");
    return;
  }
  if (!c.job.character(who)) return;  // said by checkNames
  if (std::none_of(c.beats.begin(), c.beats.end(),
                   [&](const Beat& beat) { return isIn(beat, who); }))
    c.add("focus", fmt::format("{} is in no panel of this page.", who));
}

void checkHead(Case& c) {
  const Rect live = c.job.sheetFor(c.page).liveRect(Job::isRightHand(c.page));
  if (c.brief.leastHeadMm > live.height())
    c.add("head-mm", fmt::format("a head of {} mm is higher than the live area, {:.1f} mm.",
                                 c.brief.leastHeadMm, live.height()));
}

void checkKeepClear(Case& c) {
  const Rect page = c.job.sheetFor(c.page).bleedRect();
  const Rect live = c.job.sheetFor(c.page).liveRect(Job::isRightHand(c.page));
  for (const auto& [name, r] : c.brief.keepClear) {
    if (r.max.x <= page.min.x || r.min.x >= page.max.x || r.max.y <= page.min.y ||
        r.min.y >= page.max.y)
      c.add("keep-clear", fmt::format("{} lies outside the page.", name),
            "Lengths are mm from the trim's top left corner.");
    if (r.contains(live.min) && r.contains(live.max))
      c.add("keep-clear", fmt::format("{} covers the whole live area.", name));
  }
}

void checkWords(Case& c) {
  int words = 0;
  for (const Beat& beat : c.beats) words += beat.words();
  if (words > c.brief.mostWords)
    c.add("words",
          fmt::format("the script has {} words on this page, {} more than the {} allowed.", words,
                      words - c.brief.mostWords, c.brief.mostWords),
          "Ask for cuts, or allow more.");
}

void checkDue(Case& c) {
  const std::string& due = c.brief.due;
  if (!due.empty() && !isDate(due)) return c.add("due", fmt::format("{} is not a date.", due));
  if (!due.empty() && isDate(c.job.due) && due > c.job.due)
    c.add("due", fmt::format("the page is due on {}, after the whole job ({}).", due, c.job.due));
}

}  // namespace

Problems unknownNamesIn(const Brief& brief, const Page& page, const Job& job) {
  Case c{brief, page, job, page.correctedBeats(), {}};
  checkNames(c);
  return std::move(c.found);
}

Problems contradictionsOf(const Brief& brief, const Page& page, const Job& job) {
  Case c{brief, page, job, page.correctedBeats(), {}};
  for (const auto check : {checkNames, checkDominant, checkShare, checkSmallPanels, checkFocus,
                           checkHead, checkKeepClear, checkWords, checkDue})
    check(c);
  return std::move(c.found);
}

}  // namespace tw
