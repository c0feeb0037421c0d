#include "review/tail_findings.h"

#include <fmt/format.h>

#include <algorithm>
#include <optional>

#include "geometry/polygon.h"
#include "review/card_writer.h"
#include "review/panel_findings.h"

namespace tw {

namespace {

constexpr double kTouchMm2 = 0.6;  // tails that share more run into each other
constexpr double kMarkMm = 2;

/// Where the tail ends: its point farthest from the middle of its balloon.
Point tipOf(const PlacedBalloon& balloon) {
  const Point middle = bounds(balloon.outline).centre();
  return *std::ranges::max_element(balloon.tail.points, {},
                                   [&](Point p) { return (p - middle).length(); });
}

bool isSeen(const SeenFigure& figure) {
  return !figure.face.points.empty() && !figure.body.empty();
}

/// One balloon with a tail whose speaker is seen.
struct Spoken {
  const PlacedBalloon* balloon;
  const SeenFigure* speaker;
};

std::vector<Spoken> spokenIn(const RoughPanel& panel, const Beat& beat) {
  std::vector<Spoken> out;
  for (const PlacedBalloon& balloon : panel.balloons) {
    if (balloon.offPanel || balloon.tail.points.size() < 3) continue;
    const auto item = std::ranges::find(beat.copy, balloon.item, &CopyItem::id);
    if (item == beat.copy.end()) continue;
    const auto who = std::ranges::find(panel.figures, item->speaker, &SeenFigure::who);
    if (who != panel.figures.end() && isSeen(*who)) out.push_back({&balloon, &*who});
  }
  return out;
}

/// The figure whose mouth is nearest to the tip, besides the speaker.
const SeenFigure* nearestOther(const RoughPanel& panel, const SeenFigure& speaker, Point tip) {
  const SeenFigure* nearest = nullptr;
  for (const SeenFigure& figure : panel.figures) {
    if (&figure == &speaker || !isSeen(figure)) continue;
    if (nearest == nullptr || (figure.mouth - tip).length() < (nearest->mouth - tip).length())
      nearest = &figure;
  }
  return nearest;
}

bool runsIntoAnother(const Spoken& spoken, const RoughPanel& panel) {
  return std::ranges::any_of(panel.balloons, [&](const PlacedBalloon& other) {
    if (&other == spoken.balloon || other.tail.points.size() < 3) return false;
    return area(common({spoken.balloon->tail}, {other.tail})) > kTouchMm2;
  });
}

std::optional<Found> faultOf(const Spoken& spoken, const RoughPanel& panel, const Job& job) {
  const Point tip = tipOf(*spoken.balloon);
  const std::string who = calledIn(job, spoken.speaker->who);
  const SeenFigure* other = nearestOther(panel, *spoken.speaker, tip);
  Found found;
  found.limit = 100;
  found.place = polygonOf({tip - Vector{kMarkMm, kMarkMm}, tip + Vector{kMarkMm, kMarkMm}});
  if (other != nullptr) {
    const double own = (spoken.speaker->mouth - tip).length();
    found.value = 100 * own / std::max(0.1, (other->mouth - tip).length());
    const bool onOther = contains(other->body, tip) && !contains(spoken.speaker->body, tip);
    if (found.value > found.limit || onOther) {
      found.reason = fmt::format("the tail of what {} says ends {} {}", who,
                                 onOther ? "on" : "nearer to", calledIn(job, other->who));
      return found;
    }
  }
  if (!runsIntoAnother(spoken, panel)) return std::nullopt;
  found.reason = fmt::format("the tail of what {} says runs into another tail", who);
  return found;
}

}  // namespace

std::vector<Finding> tailFindings(const Rough& rough, const PageCase& page,
                                  const EvidenceBook& book) {
  constexpr const char* kRule = "tail to the speaker";
  std::vector<Finding> out;
  for (std::size_t i = 0; i < rough.panels.size(); ++i)
    for (const Spoken& spoken : spokenIn(rough.panels[i], page.panels[i].beat)) {
      auto found = faultOf(spoken, rough.panels[i], *page.job);
      if (!found) continue;
      found->panel = static_cast<int>(i) + 1;
      Finding finding = findingOf(kRule, book.of(kRule), std::move(*found));
      finding.page = page.page->number;
      finding.beat = page.panels[i].beat.id;
      out.push_back(std::move(finding));
    }
  return out;
}

}  // namespace tw
