#include "review/reading_findings.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <numbers>

#include "geometry/polygon.h"
#include "read/page_handed_on.h"
#include "review/card_writer.h"
#include "review/panel_findings.h"
#include "review/rules.h"

namespace tw {

namespace {

/// Fewer readers than this passing a panel by is how pages are read (facts: textless panels are
/// often seen from the corner of the eye); our choice.
constexpr double kMostPassBy = 0.25;
/// The focus holds when it is at least as strong as the strongest other place.
constexpr double kHolds = 0.5;
/// So many centres the eye takes in as a theme and its answer; our choice.
constexpr std::size_t kMostCentres = 2;
/// Darkness this far off the page's middle, of half its side; our choice.
constexpr double kMostTilt = 0.2;
constexpr double kSpotMm = 5;

class Gathering {
 public:
  Gathering(const PageReadings& readings, const PageCase& page, const EvidenceBook& book)
      : r_(readings), page_(page), book_(book) {}

  std::vector<Finding> all() {
    skipped();
    squints();
    centre();
    fights();
    balance();
    return std::move(out_);
  }

 private:
  void add(const char* rule, Found found) {
    const int panel = found.panel;
    Finding finding = findingOf(rule, book_.of(rule), std::move(found));
    finding.page = page_.page->number;
    if (panel > 0) finding.beat = page_.panels[static_cast<std::size_t>(panel) - 1].beat.id;
    out_.push_back(std::move(finding));
  }

  static Polygon spotAt(Point at) {
    return polygonOf({at - Vector{kSpotMm, kSpotMm}, at + Vector{kSpotMm, kSpotMm}});
  }

  void skipped() {
    for (std::size_t i = 0; i < r_.eyes.panels.size() && i < page_.panels.size(); ++i) {
      const double missed = r_.eyes.panels[i].neverSeen;
      if (missed <= kMostPassBy) continue;
      add("panel skipped", {.reason = fmt::format(
                                "{:.0f} % of readers' eyes never rest on this panel", 100 * missed),
                            .panel = static_cast<int>(i) + 1,
                            .value = 100 * missed,
                            .limit = 100 * kMostPassBy});
    }
  }

  void squints() {
    for (std::size_t i = 0; i < r_.squints.size(); ++i) {
      const Squint& squint = r_.squints[i];
      const PanelCase& panel = page_.panels[i];
      if (panel.focus.empty() || !squint.seen || squint.holds >= kHolds) continue;
      add("squint",
          {.reason = fmt::format(
               "small, blurred and grey, {} is only number {} of what stands out; "
               "the place marked is stronger ({:.2f} against {:.2f})",
               calledIn(*page_.job, panel.focus), squint.rank, squint.elsewhere, squint.strength),
           .panel = static_cast<int>(i) + 1,
           .value = 100 * squint.holds,
           .limit = 100 * kHolds,
           .place = spotAt(squint.elsewhereAt)});
    }
  }

  void centre() {
    if (page_.dominant && r_.picture.dominantHolds < kHolds && r_.picture.strongest >= 0)
      add("one centre",
          {.reason = fmt::format("at arm's length panel {} stands out before the dominant panel",
                                 r_.picture.strongest + 1),
           .panel = static_cast<int>(*page_.dominant) + 1,
           .value = 100 * r_.picture.dominantHolds,
           .limit = 100 * kHolds});
    const std::size_t centres = r_.picture.centres.size();
    if (centres > kMostCentres)
      add("centres compete",
          {.reason =
               fmt::format("{} places are of nearly the same strength at arm's length", centres),
           .value = static_cast<double>(centres),
           .limit = static_cast<double>(kMostCentres)});
  }

  void fights() {
    for (const FocusFight& fight : r_.picture.fights)
      add("focuses fight",
          {.reason = fmt::format("the focuses of panels {} and {} are {:.0f} mm apart and both "
                                 "strong",
                                 fight.a + 1, fight.b + 1, fight.apartMm),
           .panel = std::max(fight.a, fight.b) + 1,
           .value = fight.apartMm,
           .limit = kOneGlanceMm});
  }

  void balance() {
    const Vector tilt = r_.picture.balance;
    if (tilt.length() <= kMostTilt) return;
    const bool sideways = std::abs(tilt.x) >= std::abs(tilt.y);
    const char* side = sideways ? (tilt.x > 0 ? "right" : "left") : tilt.y > 0 ? "foot" : "head";
    add("blacks balance", {.reason = fmt::format("the page's darkness hangs {:.0f} % toward its {}",
                                                 100 * tilt.length(), side),
                           .value = 100 * tilt.length(),
                           .limit = 100 * kMostTilt});
  }

  const PageReadings& r_;
  const PageCase& page_;
  const EvidenceBook& book_;
  std::vector<Finding> out_;
};

/// Where even the best aim brings less of a lead's cone to the next panel, none is asked for.
constexpr double kReachable = 0.2;

/// The best direction for the panel's lead.
const ChangedLead* bestAim(const std::vector<ChangedLead>& changes) {
  const auto found = std::ranges::find(changes, LeadChange::AimBest, &ChangedLead::change);
  return found == changes.end() ? nullptr : &*found;
}

/// Degrees from one direction to another, clockwise on the page over 0.
double turnBetween(Vector from, Vector to) {
  const double cross = from.x * to.y - from.y * to.x, dot = from.x * to.x + from.y * to.y;
  return std::atan2(cross, dot) * 180 / std::numbers::pi;
}

}  // namespace

void aimLeads(std::vector<Finding>& findings, const SeenPage& page) {
  const std::string handedOn(nameOf(RuleId::HandedOn)), leaks(nameOf(RuleId::LeaksOff));
  std::erase_if(findings, [&](Finding& finding) {
    if (finding.rule != handedOn && finding.rule != leaks) return false;
    const auto panel = static_cast<std::size_t>(finding.panel) - 1;
    const std::vector<ChangedLead> changes = changedLeads(page, panel);
    const ChangedLead* best = bestAim(changes);
    if (best == nullptr || best->arrival.next < kReachable) return finding.rule == handedOn;
    const double turn = turnBetween(page.panels[panel].lead.direction, best->lead.direction);
    finding.reason +=
        fmt::format("; turned {:.0f}° {}, {:.0f} % would arrive at the next panel", std::abs(turn),
                    turn > 0 ? "clockwise" : "anticlockwise", 100 * best->arrival.next);
    return false;
  });
}

std::vector<Finding> readingFindings(const PageReadings& readings, const PageCase& page,
                                     const EvidenceBook& book) {
  return Gathering(readings, page, book).all();
}

}  // namespace tw
