#include "review/thing_findings.h"

#include <fmt/format.h>

#include <algorithm>
#include <string>

#include "review/card_writer.h"

namespace tw {

namespace {

/// Of the panel: so much of a thing is in sight however little of the whole it is.
constexpr double kLargeShare = 0.01;
constexpr double kUnseen = 1;  // %

struct OutOfSight {
  std::string name;
  double percent = 0;
};

/// The beat's own things that are not in sight; what a rough adds of itself may be anywhere.
std::vector<OutOfSight> outOfSight(const std::vector<SeenThing>& things, const Beat& beat) {
  std::vector<OutOfSight> out;
  for (const SeenThing& thing : things) {
    const auto prop = std::ranges::find(beat.props, thing.prop, &Prop::id);
    const bool isSeen =
        thing.isTooFine || thing.share >= kLargeShare || 100 * thing.visible >= kLeastInSight;
    if (prop != beat.props.end() && !isSeen) out.push_back({prop->name, 100 * thing.visible});
  }
  return out;
}

std::string reasonFor(const std::vector<OutOfSight>& things) {
  std::string words;
  for (const OutOfSight& thing : things) {
    words += words.empty() ? "" : ", ";
    words += thing.percent < kUnseen
                 ? fmt::format("the {} is named and not seen", thing.name)
                 : fmt::format("{:.0f} % of the {} is seen", thing.percent, thing.name);
  }
  return words;
}

}  // namespace

double leastInSight(const std::vector<SeenThing>& things, const Beat& beat) {
  const auto unseen = outOfSight(things, beat);
  return unseen.empty() ? 100 : std::ranges::min(unseen, {}, &OutOfSight::percent).percent;
}

std::vector<Finding> thingFindings(const std::vector<std::vector<SeenThing>>& things,
                                   const PageCase& page, const EvidenceBook& book) {
  std::vector<Finding> out;
  for (std::size_t i = 0; i < things.size(); ++i) {
    const Beat& beat = page.panels[i].beat;
    const auto unseen = outOfSight(things[i], beat);
    if (unseen.empty()) continue;
    Found found;
    found.panel = static_cast<int>(i) + 1;
    found.reason = reasonFor(unseen);
    found.value = leastInSight(things[i], beat);
    found.limit = kLeastInSight;
    Finding finding = findingOf(kThingsRule, book.of(std::string(kThingsRule)), std::move(found));
    finding.page = page.page->number;
    finding.beat = beat.id;
    out.push_back(std::move(finding));
  }
  return out;
}

}  // namespace tw
