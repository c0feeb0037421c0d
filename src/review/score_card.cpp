// Writing the score card.
//
// Each rule pays with the functions of costs.h and panel_rules.h. This file only adds the words:
// what was measured, what was wanted, where. The steps are
//   1. page rules on shapes (layout_rules.cpp), reading order, rhythm, words;
//   2. panel rules and pair rules, through payPanel and payPair, so that the card and the search
//      can never disagree;
//   3. joint cuts and tangents, as the exact picture found them, with their places;
//   4. copy rules from the letterer's findings;
//   5. one line at cost 0 for every rule that nothing was found against.
// The score is the sum of all lines.
#include "review/score_card.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "geometry/polygon.h"
#include "read/rhythm.h"

namespace tw {

namespace {

constexpr double kWorthALine = 0.005;

class Card {
 public:
  Card(Rough& rough, const RuleBook& book) : rough_(rough), book_(book) {}

  void add(RuleId rule, double weighted, std::string reason, int panel = 0) {
    add(rule, weighted, std::move(reason), panel, book_[rule].remedy);
  }
  /// With a remedy of its own in place of the rule's.
  void add(RuleId rule, double weighted, std::string reason, int panel, std::string remedy) {
    if (weighted < kWorthALine) return;
    rough_.card.push_back(
        {std::string(nameOf(rule)), weighted, std::move(reason), std::move(remedy), panel});
  }

  void finish() {
    for (std::size_t i = 0; i < kRules; ++i) addKept(static_cast<RuleId>(i));
    std::stable_sort(rough_.card.begin(), rough_.card.end(),
                     [](const CardLine& a, const CardLine& b) { return a.cost > b.cost; });
    rough_.score = 0;
    for (const CardLine& line : rough_.card) rough_.score += line.cost;
  }

 private:
  void addKept(RuleId rule) {
    const auto about = [&](const CardLine& line) { return line.rule == nameOf(rule); };
    if (std::any_of(rough_.card.begin(), rough_.card.end(), about)) return;
    rough_.card.push_back({std::string(nameOf(rule)), 0, "kept", "", 0});
  }

  Rough& rough_;
  const RuleBook& book_;
};

std::string percent(double share) {
  return fmt::format("{:.0f} %", 100 * share);
}

void addLayoutRules(Card& card, const Measured& m, const PageCase& page, const RuleBook& book) {
  const LayoutCosts costs = layoutCosts(m.layout, page, book);
  card.add(RuleId::AreaFollowsWeight, costs.area,
           "the panels' areas do not follow the beats' weights");
  card.add(RuleId::PanelShape, costs.shape,
           "some panels are flatter or taller than their shots ask for");
  card.add(RuleId::LeastSize, costs.least,
           fmt::format("a least size or share had to give way by {}", percent(m.layout.shortfall)));
  card.add(RuleId::DominantShare, costs.dominant,
           fmt::format("the dominant panel has {} of the panels' area, {} asked",
                       percent(m.layout.dominantShare), percent(page.brief.leastDominantShare)));
}

void addSmallPanels(Card& card, const PageCase& page, const RuleBook& book) {
  const int small = static_cast<int>(page.panels.size()) - (page.dominant ? 1 : 0);
  const int least = page.brief.leastSmallPanels.value_or(0);
  const int most = page.brief.mostSmallPanels.value_or(small);
  const int off = std::max({0, least - small, small - most});
  card.add(
      RuleId::SmallPanels, book.weight(RuleId::SmallPanels) * off,
      fmt::format("the script has {} small panels, the brief asks {} to {}", small, least, most));
}

void addReadingOrder(Card& card, const Measured& m, const RuleBook& book) {
  const double c = book.weight(RuleId::ReadingOrder) * cost::readingOrder(m.order.followed);
  const Ambiguity* worst = nullptr;
  for (const Ambiguity& step : m.order.steps)
    if (worst == nullptr || step.taken < worst->taken) worst = &step;
  std::string reason =
      fmt::format("{} of readers are expected to keep the order", percent(m.order.followed));
  if (worst != nullptr && worst->rival > 0)
    reason += fmt::format(
        "; {} panel {} rivals the next ({})",
        worst->after == 0 ? "at the start" : fmt::format("after panel {}", worst->after),
        worst->rival, worst->cause);
  else if (worst != nullptr && !worst->cause.empty())
    reason += "; " + worst->cause;
  card.add(RuleId::ReadingOrder, c, reason, worst == nullptr ? 0 : worst->after);
}

void addRhythm(Card& card, const Measured& m, const RuleBook& book) {
  std::vector<ShotSize> shots;
  std::vector<double> areas;
  for (const RoughPanel& panel : m.rough.panels) {
    shots.push_back(panel.staging.choice.shot);
    areas.push_back(area(panel.outline));
  }
  const Rhythm rhythm = rhythmOf(shots, areas);
  card.add(RuleId::Rhythm,
           book.weight(RuleId::Rhythm) * cost::rhythm(rhythm.longestRun, rhythm.shotVariety),
           fmt::format("{} panels running keep one shot size; variety {:.2f} of 1",
                       rhythm.longestRun, rhythm.shotVariety),
           rhythm.runEnds);
}

std::string reasonOf(RuleId rule, const PanelCase& panel, const PanelNumbers& n,
                     const RoughPanel& seen, const Variant& variant) {
  const SeenFigure* focus = focusFigure(seen, panel.focus);
  const std::string who = panel.focus.empty() ? "the subject" : panel.focus;
  switch (rule) {
    case RuleId::AskedShot:
      return fmt::format(
          "{} shot; {} {}", nameOf(variant.choice.shot),
          panel.beat.shot ? "the script asks for" : "such a beat is commonly shown in",
          nameOf(variant.wantedShot));
    case RuleId::AskedEyeHeight:
      return fmt::format("seen from {}; the script asks for {}", nameOf(variant.choice.eye),
                         nameOf(panel.beat.eye.value_or(variant.choice.eye)));
    case RuleId::HeadHeight:
      return fmt::format("{}'s head is {:.1f} mm, {:.1f} mm asked: {:.1f} mm short", who, n.headMm,
                         panel.leastHeadMm, panel.leastHeadMm - n.headMm);
    case RuleId::LargestFigure:
      return fmt::format("{} stands {} as high as the tallest figure", who, percent(n.rank));
    case RuleId::FocusProminent:
      return fmt::format("{} of what this shot can show of {} is seen, {} as high as the tallest",
                         percent(n.visible), who, percent(n.rank));
    case RuleId::FrameCuts:
      return fmt::format("the frame cuts {} at the {}", who,
                         focus != nullptr && focus->cut != "whole" ? focus->cut : "edge");
    case RuleId::WholeFigure:
      return fmt::format("{} is cut at the {}, whole figure asked", who,
                         focus == nullptr ? "frame" : focus->cut);
    case RuleId::Liftable:
      return fmt::format("{} of {} is clear, {} needed to lift the figure", percent(n.unobscured),
                         who, percent(kLiftableVisible));
    case RuleId::RoomForCopy:
      return fmt::format("{} of the upper third is free, the copy wants {}", percent(n.airTop),
                         percent(n.airWanted));
    case RuleId::SpeakersInOrder:
      return "the first speaker does not stand on the side that is read first";
    case RuleId::FacesSeen:
      return fmt::format("no more than {1} of the faces of {0} and of whoever speaks is seen", who,
                         percent(n.facesSeen));
    case RuleId::PoseReads:
      return fmt::format("{}'s limbs show {} of their length", who, percent(n.reach));
    case RuleId::HandedOn:
      return fmt::format("{} of the lead ({}) arrives at the next panel", percent(n.arrival.next),
                         seen.lead.why);
    case RuleId::LeaksOff:
      return fmt::format("{} of the lead ({}) runs off the sheet", percent(n.arrival.off),
                         seen.lead.why);
    default:
      return {};
  }
}

void addPanelRules(Card& card, const Measured& m, const PageCase& page, const RuleBook& book) {
  for (std::size_t i = 0; i < page.panels.size(); ++i) {
    const PanelNumbers n =
        exactNumbers(page.panels[i], m.variants[i], m.rough.panels[i], m.arrivals[i], m.covered[i]);
    payPanel(page.panels[i], n, book, [&](RuleId rule, double c) {
      if (c < kWorthALine) return;
      card.add(rule, c, reasonOf(rule, page.panels[i], n, m.rough.panels[i], m.variants[i]),
               static_cast<int>(i) + 1);
    });
  }
}

std::string reasonOf(RuleId rule, const PairNumbers& n, std::size_t second) {
  switch (rule) {
    case RuleId::ShotChanges:
      return n.shotSteps == 0 ? fmt::format("same shot size as panel {}", second)
                              : fmt::format("one step from panel {}'s shot size", second);
    case RuleId::AxisKept:
      return fmt::format("the camera crosses the axis after panel {}", second);
    default:
      return fmt::format("{:.0f}° from the view of panel {}", n.viewDegrees, second);
  }
}

void addPairRules(Card& card, const Measured& m, const PageCase& page, const RuleBook& book) {
  for (std::size_t i = 1; i < page.panels.size(); ++i) {
    const PairNumbers n =
        pairOf(page.panels[i - 1], m.variants[i - 1], page.panels[i], m.variants[i]);
    payPair(n, book, [&](RuleId rule, double c) {
      card.add(rule, c, reasonOf(rule, n, i), static_cast<int>(i) + 1);
    });
  }
}

void addWords(Card& card, const PageCase& page, const RuleBook& book) {
  const int most = mostWordsPerPanel(static_cast<int>(page.panels.size()));
  int sum = 0;
  for (std::size_t i = 0; i < page.panels.size(); ++i) {
    const int words = page.panels[i].beat.words();
    sum += words;
    card.add(RuleId::WordsInPanel, book.weight(RuleId::WordsInPanel) * cost::over(words, most),
             fmt::format("{} words; {} is the custom on such a page", words, most),
             static_cast<int>(i) + 1);
  }
  card.add(RuleId::WordsOnPage,
           book.weight(RuleId::WordsOnPage) * cost::over(sum, page.brief.mostWords),
           fmt::format("{} words, {} asked at most", sum, page.brief.mostWords));
}

constexpr std::size_t kTangentsTold = 3;  // per panel, the longest

std::string named(const std::string& id) {
  return id == "border" ? "the border" : id;
}

void addContours(Card& card, const Measured& m, const RuleBook& book) {
  for (std::size_t i = 0; i < m.rough.panels.size(); ++i) {
    const RoughPanel& seen = m.rough.panels[i];
    const int panel = static_cast<int>(i) + 1;
    for (const SeenFigure& figure : seen.figures)
      for (const JointCut& cut : figure.jointCuts)
        card.add(RuleId::JointCuts, book.weight(RuleId::JointCuts) * cost::jointCut(),
                 fmt::format("the frame falls on {}'s {} at {:.0f}, {:.0f} mm", figure.who,
                             cut.joint, cut.at.x, cut.at.y),
                 panel);
    for (std::size_t k = 0; k < std::min(kTangentsTold, seen.tangents.size()); ++k) {
      const SeenTangent& t = seen.tangents[k];
      card.add(RuleId::Tangents, book.weight(RuleId::Tangents) * cost::tangent(t.lengthMm),
               fmt::format("the contours of {} and {} {} at {:.0f}, {:.0f} mm", t.a, named(t.b),
                           t.kind == "touch" ? "only just touch" : "run along each other", t.at.x,
                           t.at.y),
               panel);
    }
  }
}

/// Words are counted above; everything else that the letterer found is about room.
void addCopy(Card& card, const Measured& m, const RuleBook& book) {
  for (std::size_t i = 0; i < m.copy.size(); ++i) {
    const int panel = static_cast<int>(i) + 1;
    for (const CopyFinding& finding : m.copy[i].findings)
      if (finding.rule != "words per panel")
        card.add(RuleId::CopyFits,
                 book.weight(RuleId::CopyFits) * std::clamp(finding.amount, 0.02, 1.0),
                 finding.reason, panel);
    const double face = m.copy[i].coveredFace, body = m.copy[i].coveredBody;
    const double whole = area(m.rough.panels[i].outline);
    card.add(
        RuleId::CopyCovers, book.weight(RuleId::CopyCovers) * (20 * face + 3 * body) / whole,
        fmt::format("balloons cover {:.0f} mm² of faces and {:.0f} mm² of figures", face, body),
        panel);
  }
}

double overlapOf(const Polygon& shape, const Rect& zone) {
  return area(common({shape}, {polygonOf(zone)}));
}

void addKeepClear(Card& card, const Measured& m, const PageCase& page, const RuleBook& book) {
  for (const KeepClear& zone : page.brief.keepClear)
    for (std::size_t i = 0; i < m.rough.panels.size(); ++i) {
      double inside = 0;
      for (const SeenFigure& figure : m.rough.panels[i].figures)
        inside += overlapOf(figure.face, zone.rect);
      for (const PlacedBalloon& balloon : m.rough.panels[i].balloons)
        inside += overlapOf(balloon.outline, zone.rect);
      card.add(RuleId::KeepClear,
               book.weight(RuleId::KeepClear) * std::min(1.0, inside / zone.rect.area()),
               fmt::format("{:.0f} mm² of faces or balloons stand in \"{}\"", inside, zone.name),
               static_cast<int>(i) + 1);
    }
}

void addContinuity(Card& card, const PageCase& page, const RuleBook& book) {
  for (const ContinuityFinding& finding : page.continuity)
    for (std::size_t i = 0; i < page.panels.size(); ++i)
      if (page.panels[i].beat.id == finding.here.beat)
        card.add(RuleId::Continuity,
                 book.weight(RuleId::Continuity) * cost::continuity(finding.severity),
                 fmt::format("{}: {}", nameOf(finding.severity), finding.sentence),
                 static_cast<int>(i) + 1, finding.remedy);
}

double meanHandedOn(const Measured& m) {
  double sum = 0, strength = 0;
  for (std::size_t i = 0; i < m.arrivals.size(); ++i) {
    sum += m.arrivals[i].next * m.rough.panels[i].lead.strength;
    strength += m.rough.panels[i].lead.strength;
  }
  return strength > 0 ? sum / strength : 0;
}

}  // namespace

void judge(Measured& m, const PageCase& page, const RuleBook& book) {
  m.rough.card.clear();
  m.rough.reading = {m.order.likely, m.order.followed, meanHandedOn(m)};
  Card card(m.rough, book);
  addLayoutRules(card, m, page, book);
  addSmallPanels(card, page, book);
  addReadingOrder(card, m, book);
  addRhythm(card, m, book);
  addPanelRules(card, m, page, book);
  addPairRules(card, m, page, book);
  addWords(card, page, book);
  addContours(card, m, book);
  addCopy(card, m, book);
  addKeepClear(card, m, page, book);
  addContinuity(card, page, book);
  card.finish();
}

std::vector<std::string> missedDemands(const Rough& rough, const RuleBook& book) {
  std::vector<std::string> out;
  for (const CardLine& line : rough.card)
    for (std::size_t i = 0; i < kRules; ++i) {
      const RuleId rule = static_cast<RuleId>(i);
      if (line.cost <= 0 || !book[rule].demand || line.rule != nameOf(rule)) continue;
      out.push_back(line.panel > 0
                        ? fmt::format("{}: panel {}: {}", line.rule, line.panel, line.reason)
                        : fmt::format("{}: {}", line.rule, line.reason));
    }
  return out;
}

}  // namespace tw
