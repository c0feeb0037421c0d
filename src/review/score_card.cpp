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
#include "review/panel_findings.h"

namespace tw {

namespace {

std::string percent(double share) {
  return fmt::format("{:.0f} %", 100 * share);
}

/// The panel that pulls most at a rule about shapes, with its figures.
struct Odd {
  int panel = 0;
  double is = 0, wished = 0;
};

Odd oddestArea(const Measured& m, const PageCase& page) {
  double sum = 0;
  for (const LayoutPanel& panel : m.layout.panels)
    if (!panel.ground) sum += area(panel.outline);
  Odd out;
  double worst = 0;
  for (std::size_t i = 0; i < m.layout.panels.size(); ++i) {
    if (m.layout.panels[i].ground) continue;
    const double share = area(m.layout.panels[i].outline) / sum;
    const double off = cost::areaFollowsWeight(share, page.panels[i].weightShare);
    if (off <= worst) continue;
    worst = off;
    out = {static_cast<int>(i) + 1, share, page.panels[i].weightShare};
  }
  return out;
}

Odd oddestShape(const Measured& m, const PageCase& page) {
  Odd out;
  double worst = 0;
  for (std::size_t i = 0; i < m.layout.panels.size(); ++i) {
    if (m.layout.panels[i].ground) continue;
    const Rect box = bounds(m.layout.panels[i].outline);
    const double aspect = box.width() / box.height();
    const double off = cost::panelShape(aspect, page.panels[i].aspectWish);
    if (off <= worst) continue;
    worst = off;
    out = {static_cast<int>(i) + 1, aspect, page.panels[i].aspectWish};
  }
  return out;
}

void addShapes(CardWriter& card, const Measured& m, const PageCase& page,
               const LayoutCosts& costs) {
  const Odd size = oddestArea(m, page);
  card.add(RuleId::AreaFollowsWeight, costs.area,
           {.reason = fmt::format("the areas do not follow the beats' weights, panel {} least: {} "
                                  "of the page, {} wished",
                                  size.panel, percent(size.is), percent(size.wished)),
            .panel = size.panel,
            .value = 100 * size.is,
            .limit = 100 * size.wished});
  const Odd shape = oddestShape(m, page);
  card.add(RuleId::PanelShape, costs.shape,
           {.reason = fmt::format("panel {} is {} than its shot asks for: {:.2f} times as wide as "
                                  "high, {:.2f} wished",
                                  shape.panel, shape.is > shape.wished ? "flatter" : "taller",
                                  shape.is, shape.wished),
            .panel = shape.panel,
            .value = shape.is,
            .limit = shape.wished});
}

void addLayoutRules(CardWriter& card, const Measured& m, const PageCase& page) {
  const LayoutCosts costs = layoutCosts(m.layout, page, card.book());
  addShapes(card, m, page, costs);
  card.add(RuleId::LeastSize, costs.least,
           {.reason = fmt::format("a least size or share had to give way by {}",
                                  percent(m.layout.shortfall)),
            .value = 100 * m.layout.shortfall});
  const int dominant = page.dominant ? static_cast<int>(*page.dominant) + 1 : 0;
  card.add(RuleId::DominantShare, costs.dominant,
           {.reason = fmt::format("the dominant panel has {} of the panels' area, {} asked",
                                  percent(m.layout.dominantShare),
                                  percent(page.brief.leastDominantShare)),
            .panel = dominant,
            .value = 100 * m.layout.dominantShare,
            .limit = 100 * page.brief.leastDominantShare});
}

void addSmallPanels(CardWriter& card, const PageCase& page) {
  const int small = static_cast<int>(page.panels.size()) - (page.dominant ? 1 : 0);
  const int least = page.brief.leastSmallPanels.value_or(0);
  const int most = page.brief.mostSmallPanels.value_or(small);
  const int off = std::max({0, least - small, small - most});
  card.add(RuleId::SmallPanels, card.weight(RuleId::SmallPanels) * off,
           {.reason = fmt::format("the script has {} small panels, the brief asks {} to {}", small,
                                  least, most),
            .value = static_cast<double>(small),
            .limit = static_cast<double>(small < least ? least : most)});
}

std::string orderInWords(const OrderReading& order, const Ambiguity* worst) {
  std::string out =
      fmt::format("{} of readers are expected to keep the order", percent(order.followed));
  if (worst != nullptr && worst->rival > 0)
    out += fmt::format(
        "; {} panel {} rivals the next ({})",
        worst->after == 0 ? "at the start" : fmt::format("after panel {}", worst->after),
        worst->rival, worst->cause);
  else if (worst != nullptr && !worst->cause.empty())
    out += "; " + worst->cause;
  return out;
}

void addReadingOrder(CardWriter& card, const Measured& m) {
  const Ambiguity* worst = nullptr;
  for (const Ambiguity& step : m.order.steps)
    if (worst == nullptr || step.taken < worst->taken) worst = &step;
  card.add(RuleId::ReadingOrder,
           card.weight(RuleId::ReadingOrder) * cost::readingOrder(m.order.followed),
           {.reason = orderInWords(m.order, worst),
            .panel = worst == nullptr ? 0 : worst->after,
            .value = 100 * m.order.followed,
            .limit = 90});
}

void addRhythm(CardWriter& card, const Measured& m) {
  std::vector<ShotSize> shots;
  std::vector<double> areas;
  for (const RoughPanel& panel : m.rough.panels) {
    shots.push_back(panel.staging.choice.shot);
    areas.push_back(area(panel.outline));
  }
  const Rhythm rhythm = rhythmOf(shots, areas);
  card.add(RuleId::Rhythm,
           card.weight(RuleId::Rhythm) * cost::rhythm(rhythm.longestRun, rhythm.shotVariety),
           {.reason = fmt::format("{} panels running keep one shot size; variety {:.2f} of 1",
                                  rhythm.longestRun, rhythm.shotVariety),
            .panel = rhythm.runEnds,
            .value = static_cast<double>(rhythm.longestRun),
            .limit = 2});
}

void addWords(CardWriter& card, const PageCase& page) {
  const int most = mostWordsPerPanel(static_cast<int>(page.panels.size()));
  int sum = 0;
  for (std::size_t i = 0; i < page.panels.size(); ++i) {
    const int words = page.panels[i].beat.words();
    sum += words;
    card.add(RuleId::WordsInPanel, card.weight(RuleId::WordsInPanel) * cost::over(words, most),
             {.reason = fmt::format("{} words; {} is the custom on such a page", words, most),
              .panel = static_cast<int>(i) + 1,
              .value = static_cast<double>(words),
              .limit = static_cast<double>(most)});
  }
  card.add(RuleId::WordsOnPage,
           card.weight(RuleId::WordsOnPage) * cost::over(sum, page.brief.mostWords),
           {.reason = fmt::format("{} words, {} asked at most", sum, page.brief.mostWords),
            .value = static_cast<double>(sum),
            .limit = static_cast<double>(page.brief.mostWords)});
}

constexpr std::size_t kTangentsTold = 3;  // per panel, the longest
constexpr double kMarkMm = 3;             // half the side of the square that marks a spot

Polygon spot(Point at) {
  return polygonOf({{at.x - kMarkMm, at.y - kMarkMm}, {at.x + kMarkMm, at.y + kMarkMm}});
}

/// Who or what a contour belongs to, in words.
std::string named(const std::string& id, const PageCase& page) {
  return id == "border" ? "the border" : id == "set" ? "the set" : calledIn(*page.job, id);
}

void addJointCuts(CardWriter& card, const SeenFigure& figure, int panel, const PageCase& page) {
  for (const JointCut& cut : figure.jointCuts)
    card.add(RuleId::JointCuts, card.weight(RuleId::JointCuts) * cost::jointCut(),
             {.reason = fmt::format("the frame falls on {}'s {} at {:.0f}, {:.0f} mm",
                                    calledIn(*page.job, figure.who), cut.joint, cut.at.x, cut.at.y),
              .panel = panel,
              .value = 1,
              .place = spot(cut.at)});
}

void addTangent(CardWriter& card, const SeenTangent& t, int panel, const PageCase& page) {
  card.add(
      RuleId::Tangents, card.weight(RuleId::Tangents) * cost::tangent(t.lengthMm),
      {.reason = fmt::format(
           "the contours of {} and {} {} at {:.0f}, {:.0f} mm", named(t.a, page), named(t.b, page),
           t.kind == "touch" ? "only just touch" : "run along each other", t.at.x, t.at.y),
       .panel = panel,
       .value = t.lengthMm,
       .place = spot(t.at)});
}

void addContours(CardWriter& card, const Measured& m, const PageCase& page) {
  for (std::size_t i = 0; i < m.rough.panels.size(); ++i) {
    const RoughPanel& seen = m.rough.panels[i];
    const int panel = static_cast<int>(i) + 1;
    for (const SeenFigure& figure : seen.figures) addJointCuts(card, figure, panel, page);
    for (std::size_t k = 0; k < std::min(kTangentsTold, seen.tangents.size()); ++k)
      addTangent(card, seen.tangents[k], panel, page);
  }
}

Polygon outlineOf(const std::vector<PlacedBalloon>& balloons, const std::string& item) {
  const auto found = std::ranges::find(balloons, item, &PlacedBalloon::item);
  return found == balloons.end() ? Polygon{} : found->outline;
}

/// Words are counted above; everything else that the letterer found is about room.
void addCopy(CardWriter& card, const Measured& m) {
  for (std::size_t i = 0; i < m.copy.size(); ++i) {
    const int panel = static_cast<int>(i) + 1;
    for (const CopyFinding& finding : m.copy[i].findings)
      if (finding.rule != "words per panel")
        card.add(RuleId::CopyFits,
                 card.weight(RuleId::CopyFits) * std::clamp(finding.amount, 0.02, 1.0),
                 {.reason = finding.reason,
                  .panel = panel,
                  .value = 100 * finding.amount,
                  .place = outlineOf(m.copy[i].balloons, finding.item)});
    const double face = m.copy[i].coveredFace, body = m.copy[i].coveredBody;
    const double whole = area(m.rough.panels[i].outline);
    card.add(RuleId::CopyCovers, card.weight(RuleId::CopyCovers) * (20 * face + 3 * body) / whole,
             {.reason = fmt::format("balloons cover {:.0f} mm² of faces and {:.0f} mm² of figures",
                                    face, body),
              .panel = panel,
              .value = face + body});
  }
}

double overlapOf(const Polygon& shape, const Rect& zone) {
  return area(common({shape}, {polygonOf(zone)}));
}

/// Faces and balloons of a panel inside a zone, mm².
double insideZone(const RoughPanel& panel, const Rect& zone) {
  double inside = 0;
  for (const SeenFigure& figure : panel.figures) inside += overlapOf(figure.face, zone);
  for (const PlacedBalloon& balloon : panel.balloons) inside += overlapOf(balloon.outline, zone);
  return inside;
}

void addKeepClear(CardWriter& card, const Measured& m, const PageCase& page) {
  for (const KeepClear& zone : page.brief.keepClear)
    for (std::size_t i = 0; i < m.rough.panels.size(); ++i) {
      const double inside = insideZone(m.rough.panels[i], zone.rect);
      card.add(RuleId::KeepClear,
               card.weight(RuleId::KeepClear) * std::min(1.0, inside / zone.rect.area()),
               {.reason = fmt::format("{:.0f} mm² of faces or balloons stand in \"{}\"", inside,
                                      zone.name),
                .panel = static_cast<int>(i) + 1,
                .value = inside,
                .place = polygonOf(zone.rect)});
    }
}

void addContinuity(CardWriter& card, const PageCase& page) {
  for (const ContinuityFinding& finding : page.continuity)
    for (std::size_t i = 0; i < page.panels.size(); ++i)
      if (page.panels[i].beat.id == finding.here.beat)
        card.add(RuleId::Continuity,
                 card.weight(RuleId::Continuity) * cost::continuity(finding.severity),
                 {.reason = fmt::format("{}: {}", nameOf(finding.severity), finding.sentence),
                  .panel = static_cast<int>(i) + 1,
                  .value = 1,
                  .remedy = finding.remedy,
                  .severity = finding.severity});
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
  m.rough.reading = {m.order.likely, m.order.followed, meanHandedOn(m)};
  CardWriter card(book, page.page->number);
  addLayoutRules(card, m, page);
  addSmallPanels(card, page);
  addReadingOrder(card, m);
  addRhythm(card, m);
  addPanelRules(card, m, page);
  addPairRules(card, m, page);
  addWords(card, page);
  addContours(card, m, page);
  addCopy(card, m);
  addKeepClear(card, m, page);
  addContinuity(card, page);
  card.finish(m.rough, m.findings);
  for (Finding& finding : m.findings)
    if (finding.panel > 0)
      finding.beat = page.panels[static_cast<std::size_t>(finding.panel) - 1].beat.id;
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
