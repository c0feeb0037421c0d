#include "review/panel_findings.h"

#include <fmt/format.h>

#include <algorithm>

#include "geometry/polygon.h"

namespace tw {

namespace {

std::string percent(double share) {
  return fmt::format("{:.0f} %", 100 * share);
}

/// One panel as its findings see it.
class PanelFindings {
 public:
  PanelFindings(const Measured& m, const PageCase& page, std::size_t i)
      : panel_(page.panels[i]),
        seen_(m.rough.panels[i]),
        variant_(m.variants[i]),
        n_(exactNumbers(panel_, variant_, seen_, m.arrivals[i], m.covered[i])),
        focus_(focusFigure(seen_, panel_.focus)),
        who_(panel_.focus.empty() ? "the subject" : calledIn(*page.job, panel_.focus)),
        last_(i + 1 == page.panels.size()) {}

  const PanelNumbers& numbers() const { return n_; }

  Found of(RuleId rule) const {
    Found found;
    switch (rule) {
      case RuleId::AskedShot:
        return shot();
      case RuleId::AskedEyeHeight:
        found.reason =
            fmt::format("seen from {}; the script asks for {}", nameOf(variant_.choice.eye),
                        nameOf(panel_.beat.eye.value_or(variant_.choice.eye)));
        found.value = n_.askedEye;
        return found;
      case RuleId::RoomForCopy:
        return of(fmt::format("{} of the upper third is free, the copy wants {}",
                              percent(n_.airTop), percent(n_.airWanted)),
                  100 * n_.airTop, 100 * n_.airWanted, upperThird());
      case RuleId::SpeakersInOrder:
        return of("the first speaker does not stand on the side that is read first",
                  n_.speakersInOrder, 1, {});
      case RuleId::FacesSeen:
        return of(fmt::format("no more than {1} of the faces of {0} and of whoever speaks is seen",
                              who_, percent(n_.facesSeen)),
                  100 * n_.facesSeen, 100, {});
      case RuleId::HandedOn:
        found = of(fmt::format("{} of the lead ({}) arrives at the {}", percent(n_.arrival.next),
                               seen_.lead.why, last_ ? "page turn" : "next panel"),
                   100 * n_.arrival.next, 90, {});
        // The rule's own remedy speaks of the next panel, and to flip would lead back into the
        // page.
        if (last_) found.remedy = "Aim the picture's lead at the corner where the page is turned.";
        return found;
      case RuleId::LeaksOff:
        found = of(fmt::format("{} of the lead ({}) runs off the sheet", percent(n_.arrival.off),
                               seen_.lead.why),
                   100 * n_.arrival.off, 10, {});
        if (last_) found.remedy = "Aim the picture's lead a little further into the sheet.";
        return found;
      default:
        return ofFocus(rule);
    }
  }

 private:
  static Found of(std::string reason, double value, double limit, Polygon place) {
    Found found;
    found.reason = std::move(reason);
    found.value = value;
    found.limit = limit;
    found.place = std::move(place);
    return found;
  }

  Found shot() const {
    return of(
        fmt::format("{} shot; {} {}", nameOf(variant_.choice.shot),
                    panel_.beat.shot ? "the script asks for" : "such a beat is commonly shown in",
                    nameOf(variant_.wantedShot)),
        n_.askedShot, panel_.beat.shot ? 0 : 1, {});
  }

  /// The rules about the figure that the panel is about.
  Found ofFocus(RuleId rule) const {
    const std::string cut = focus_ != nullptr ? focus_->cut : "frame";
    switch (rule) {
      case RuleId::HeadHeight:
        return of(fmt::format("{}'s head is {:.1f} mm, {:.1f} mm asked: {:.1f} mm short", who_,
                              n_.headMm, panel_.leastHeadMm, panel_.leastHeadMm - n_.headMm),
                  n_.headMm, panel_.leastHeadMm, face());
      case RuleId::LargestFigure:
        return of(fmt::format("{} stands {} as high as the tallest figure", who_, percent(n_.rank)),
                  100 * n_.rank, 100, body());
      case RuleId::FocusProminent:
        return of(fmt::format("{} of what this shot can show of {} is seen, {} as high as the "
                              "tallest",
                              percent(n_.visible), who_, percent(n_.rank)),
                  100 * n_.visible, 75, body());
      case RuleId::FrameCuts:
        return of(fmt::format("the frame cuts {} at the {}", who_,
                              focus_ != nullptr && cut != "whole" ? cut : "edge"),
                  100 * n_.cut, 0, body());
      case RuleId::WholeFigure:
        return of(fmt::format("{} is cut at the {}, whole figure asked", who_, cut),
                  100 * n_.visible, 100, body());
      case RuleId::Liftable:
        return of(fmt::format("{} of {} is clear, {} needed to lift the figure",
                              percent(n_.unobscured), who_, percent(kLiftableVisible)),
                  100 * n_.unobscured, 100 * kLiftableVisible, body());
      case RuleId::PoseReads:
        return of(fmt::format("{}'s limbs show {} of their length", who_, percent(n_.reach)),
                  100 * n_.reach, 70, body());
      default:
        return {};
    }
  }

  Polygon face() const { return focus_ == nullptr ? Polygon{} : focus_->face; }
  Polygon body() const {
    if (focus_ == nullptr || focus_->body.empty()) return {};
    Rect box = bounds(focus_->body.front());
    for (const Polygon& part : focus_->body) box = united(box, bounds(part));
    return polygonOf(box);
  }
  static Rect united(const Rect& a, const Rect& b) {
    return {{std::min(a.min.x, b.min.x), std::min(a.min.y, b.min.y)},
            {std::max(a.max.x, b.max.x), std::max(a.max.y, b.max.y)}};
  }
  Polygon upperThird() const {
    Rect box = bounds(seen_.outline);
    box.max.y = box.min.y + box.height() / 3;
    return polygonOf(box);
  }

  const PanelCase& panel_;
  const RoughPanel& seen_;
  const Variant& variant_;
  PanelNumbers n_;
  const SeenFigure* focus_;
  std::string who_;
  bool last_;
};

Found ofPair(RuleId rule, const PairNumbers& n, std::size_t first) {
  Found found;
  found.panel = static_cast<int>(first) + 1;
  switch (rule) {
    case RuleId::ShotChanges:
      found.reason = n.shotSteps == 0 ? fmt::format("same shot size as panel {}", first)
                                      : fmt::format("one step from panel {}'s shot size", first);
      found.value = n.shotSteps;
      found.limit = 2;
      return found;
    case RuleId::AxisKept:
      found.reason = fmt::format("the camera crosses the axis after panel {}", first);
      found.value = -1;
      found.limit = 1;
      return found;
    default:
      found.reason = fmt::format("{:.0f}° from the view of panel {}", n.viewDegrees, first);
      found.value = n.viewDegrees;
      found.limit = 30;
      return found;
  }
}

}  // namespace

std::optional<Found> panelFound(RuleId rule, const Measured& m, const PageCase& page,
                                std::size_t panel) {
  if (rule < RuleId::AskedShot || rule > RuleId::LeaksOff) return std::nullopt;
  Found found = PanelFindings(m, page, panel).of(rule);
  if (found.reason.empty()) return std::nullopt;
  return found;
}

void addPanelRules(CardWriter& card, const Measured& m, const PageCase& page) {
  for (std::size_t i = 0; i < page.panels.size(); ++i) {
    const PanelFindings panel(m, page, i);
    payPanel(page.panels[i], panel.numbers(), card.book(), [&](RuleId rule, double c) {
      if (c < kWorthALine) return;
      Found found = panel.of(rule);
      found.panel = static_cast<int>(i) + 1;
      card.add(rule, c, std::move(found));
    });
  }
}

void addPairRules(CardWriter& card, const Measured& m, const PageCase& page) {
  for (std::size_t i = 1; i < page.panels.size(); ++i) {
    const PairNumbers n =
        pairOf(page.panels[i - 1], m.variants[i - 1], page.panels[i], m.variants[i]);
    payPair(n, card.book(), [&](RuleId rule, double c) {
      if (c >= kWorthALine) card.add(rule, c, ofPair(rule, n, i));
    });
  }
}

}  // namespace tw
