// Comparing two roughs.
//
// 1. Rules: the lines of each card are added up by rule; what differs by less than kSameCost on the
//    card's two decimals is the same. The largest difference comes first, whoever it is for.
// 2. Panels: matched by beat. An outline differs by the farthest that any of its corners lies from
//    the other outline, taken both ways (the Hausdorff distance of convex outlines).
// 3. Stagings: only what an artist would do otherwise is told; what rounding makes is not.
#include "review/compare_roughs.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <map>

#include "geometry/polygon.h"
#include "review/called.h"

namespace tw {

namespace {

constexpr double kSameCost = 0.005;  // cards print two decimals
constexpr double kSameMm = 0.5;      // within a pen's line
constexpr double kSameSideDeg = 10;  // an artist draws the same view; our choice
constexpr double kSameTiltDeg = 1;
constexpr double kSameGazeDeg = 5;
constexpr double kSameLensMm = 1;
constexpr double kBetter = 0.05;  // of cost: less is not worth naming as a strength

/// A rule's lines on one card.
struct OnCard {
  double cost = 0, dearest = 0;
  std::string reason;
  std::vector<int> panels;
  int dearestPanel = 0;
};

std::map<std::string, OnCard> byRule(const Rough& rough) {
  std::map<std::string, OnCard> out;
  for (const CardLine& line : rough.card) {
    OnCard& rule = out[line.rule];
    rule.cost += line.cost;
    if (line.cost <= 0) continue;
    rule.panels.push_back(line.panel);
    if (line.cost <= rule.dearest) continue;
    rule.dearest = line.cost;
    rule.reason = line.reason;
    rule.dearestPanel = line.panel;
  }
  return out;
}

std::vector<RuleDifference> ruleDifferences(const Rough& a, const Rough& b) {
  const auto inA = byRule(a), inB = byRule(b);
  std::map<std::string, RuleDifference> all;
  for (const auto& [rule, on] : inA) {
    RuleDifference& d = all[rule];
    d.costA = on.cost;
    d.reasonA = on.reason;
    d.panelsA = on.panels;
  }
  for (const auto& [rule, on] : inB) {
    RuleDifference& d = all[rule];
    d.costB = on.cost;
    d.reasonB = on.reason;
    d.panelsB = on.panels;
  }
  std::vector<RuleDifference> out;
  for (auto& [rule, d] : all) {
    if (std::abs(d.difference()) < kSameCost) continue;
    d.rule = rule;
    out.push_back(std::move(d));
  }
  std::ranges::stable_sort(out, std::greater{},
                           [](const RuleDifference& d) { return std::abs(d.difference()); });
  return out;
}

double farthest(const Polygon& from, const Polygon& to) {
  double out = 0;
  for (const Point& p : from.points) out = std::max(out, distanceToOutline(to, p));
  return out;
}

/// "12 mm wider": nothing under half a millimetre.
void tellMm(std::vector<std::string>& out, double by, const char* more, const char* less) {
  if (std::abs(by) < kSameMm) return;
  out.push_back(
      fmt::format("{:.{}f} mm {}", std::abs(by), std::abs(by) < 10 ? 1 : 0, by > 0 ? more : less));
}

std::vector<std::string> shapeWords(const RoughPanel& a, const RoughPanel& b, double mm) {
  std::vector<std::string> out;
  if (mm >= kSameMm) {
    const Rect p = bounds(a.outline), q = bounds(b.outline);
    tellMm(out, q.width() - p.width(), "wider", "narrower");
    tellMm(out, q.height() - p.height(), "taller", "flatter");
    tellMm(out, q.centre().x - p.centre().x, "to the right", "to the left");
    tellMm(out, q.centre().y - p.centre().y, "lower", "higher");
    if (out.empty()) out.push_back(fmt::format("its corners up to {:.1f} mm elsewhere", mm));
  }
  if (a.bleeds != b.bleeds) out.push_back(b.bleeds ? "bleeds" : "does not bleed");
  if (a.ground != b.ground) out.push_back(b.ground ? "under the others" : "not under the others");
  return out;
}

std::string sideInWords(double deg) {
  const double off = std::abs(deg);
  const char* side = deg > 0 ? "its left" : "its right";
  if (off < 20) return "from the front";
  if (off < 65) return fmt::format("from {} front", side);
  if (off <= 115) return fmt::format("from {}", side);
  if (off < 160) return fmt::format("from behind, {}", side);
  return "from behind";
}

std::string tiltInWords(double deg) {
  if (std::abs(deg) < kSameTiltDeg) return "level";
  return fmt::format("tilted {:.0f}°", deg);
}

std::string lensInWords(double mm) {
  return mm > 0 ? fmt::format("{:.0f} mm", mm) : std::string("as suits the shot");
}

std::string lightInWords(const Staging& staging) {
  if (!staging.light) return "as the words say";
  return staging.light->title.empty() ? "set by hand" : staging.light->title;
}

std::string poseInWords(std::string pose) {
  std::ranges::replace(pose, '-', ' ');
  return pose;
}

/// Collects "shot: medium in A, long in B".
class Differences {
 public:
  Differences(std::string a, std::string b) : a_(std::move(a)), b_(std::move(b)) {}

  void tell(std::string_view what, std::string_view inA, std::string_view inB) {
    out_.push_back(fmt::format("{}: {} in {}, {} in {}", what, inA, a_, inB, b_));
  }
  void tellIf(bool differs, std::string_view what, std::string_view inA, std::string_view inB) {
    if (differs) tell(what, inA, inB);
  }
  std::vector<std::string> take() { return std::move(out_); }

 private:
  std::string a_, b_;
  std::vector<std::string> out_;
};

void tellChoice(Differences& out, const StagingChoice& a, const StagingChoice& b) {
  out.tellIf(a.shot != b.shot, "shot", nameOf(a.shot), nameOf(b.shot));
  out.tellIf(a.eye != b.eye, "eye height", nameOf(a.eye), nameOf(b.eye));
  out.tellIf(std::abs(a.sideDeg - b.sideDeg) >= kSameSideDeg, "seen", sideInWords(a.sideDeg),
             sideInWords(b.sideDeg));
  out.tellIf(std::abs(a.tiltDeg - b.tiltDeg) >= kSameTiltDeg, "horizon", tiltInWords(a.tiltDeg),
             tiltInWords(b.tiltDeg));
  out.tellIf(a.mirrored != b.mirrored, "mirrored", a.mirrored ? "yes" : "no",
             b.mirrored ? "yes" : "no");
  out.tellIf(std::abs(a.lensMm - b.lensMm) >= kSameLensMm, "lens", lensInWords(a.lensMm),
             lensInWords(b.lensMm));
  out.tellIf(a.placement != b.placement, "who stands where", fmt::format("way {}", a.placement + 1),
             fmt::format("way {}", b.placement + 1));
}

const SetFigure* figureOf(const Staging& staging, const std::string& who) {
  const auto found = std::ranges::find(staging.figures, who, &SetFigure::who);
  return found == staging.figures.end() ? nullptr : &*found;
}

void tellFigures(Differences& out, const Job& job, const Staging& a, const Staging& b) {
  for (const SetFigure& f : a.figures) {
    const SetFigure* g = figureOf(b, f.who);
    const std::string who = calledIn(job, f.who);
    if (g == nullptr) {
      out.tell(who, "shown", "not shown");
      continue;
    }
    out.tellIf(f.pose != g->pose, who + "'s pose", poseInWords(f.pose), poseInWords(g->pose));
    const auto turned = [](const SetFigure& figure) {
      return figure.turnsDeg.empty() ? std::string("as the pose is")
                                     : fmt::format("{} turned by hand", figure.turnsDeg.size());
    };
    out.tellIf(f.turnsDeg != g->turnsDeg, who + "'s joints", turned(f), turned(*g));
    out.tellIf(std::abs(f.gazeDeg - g->gazeDeg) >= kSameGazeDeg, who + "'s head",
               fmt::format("turned {:.0f}°", f.gazeDeg), fmt::format("turned {:.0f}°", g->gazeDeg));
  }
  for (const SetFigure& g : b.figures)
    if (figureOf(a, g.who) == nullptr) out.tell(calledIn(job, g.who), "not shown", "shown");
}

PanelDifference panelDifference(const Job& job, const Rough& a, std::size_t i, const Rough& b,
                                std::size_t k) {
  const RoughPanel &p = a.panels[i], &q = b.panels[k];
  PanelDifference out;
  out.beat = p.beat;
  out.panelA = static_cast<int>(i) + 1;
  out.panelB = static_cast<int>(k) + 1;
  out.outlineMm = std::max(farthest(p.outline, q.outline), farthest(q.outline, p.outline));
  out.shape = shapeWords(p, q, out.outlineMm);
  Differences staging(a.name, b.name);
  tellChoice(staging, p.staging.choice, q.staging.choice);
  tellFigures(staging, job, p.staging, q.staging);
  staging.tellIf(p.staging.light != q.staging.light, "light", lightInWords(p.staging),
                 lightInWords(q.staging));
  out.staging = staging.take();
  return out;
}

std::size_t panelShowing(const Rough& rough, const std::string& beat) {
  return static_cast<std::size_t>(std::ranges::find(rough.panels, beat, &RoughPanel::beat) -
                                  rough.panels.begin());
}

std::vector<PanelDifference> panelDifferences(const Job& job, const Rough& a, const Rough& b) {
  std::vector<PanelDifference> out;
  for (std::size_t i = 0; i < a.panels.size(); ++i) {
    const std::size_t k = panelShowing(b, a.panels[i].beat);
    if (k < b.panels.size())
      out.push_back(panelDifference(job, a, i, b, k));
    else
      out.push_back({.beat = a.panels[i].beat, .panelA = static_cast<int>(i) + 1});
  }
  for (std::size_t k = 0; k < b.panels.size(); ++k)
    if (panelShowing(a, b.panels[k].beat) == a.panels.size())
      out.push_back({.beat = b.panels[k].beat, .panelB = static_cast<int>(k) + 1});
  return out;
}

/// By rule: mean cost over the page's other roughs.
std::map<std::string, double> usualCosts(const Rough& rough, const std::vector<Rough>& all) {
  std::map<std::string, double> sum;
  double others = 0;
  for (const Rough& other : all) {
    if (other.name == rough.name) continue;
    others += 1;
    for (const CardLine& line : other.card) sum[line.rule] += line.cost;
  }
  for (auto& [rule, cost] : sum) cost /= others;
  return sum;
}

double at(const std::map<std::string, double>& costs, const std::string& rule) {
  const auto found = costs.find(rule);
  return found == costs.end() ? 0 : found->second;
}

}  // namespace

RoughComparison compareRoughs(const Job& job, const Rough& a, const Rough& b) {
  RoughComparison out;
  out.a = a.name;
  out.b = b.name;
  out.scoreA = a.score;
  out.scoreB = b.score;
  out.rules = ruleDifferences(a, b);
  out.panels = panelDifferences(job, a, b);
  return out;
}

Standing strongestOf(const Rough& rough, const std::vector<Rough>& all) {
  const auto usual = usualCosts(rough, all);
  const auto mine = byRule(rough);
  Standing out;
  double best = kBetter;
  for (const auto& [rule, cost] : usual) {
    const auto found = mine.find(rule);
    const double here = found == mine.end() ? 0 : found->second.cost;
    if (cost - here <= best) continue;
    best = cost - here;
    out.rule = rule;
    out.cost = here;
    out.usual = cost;
  }
  if (out.rule.empty())
    out.words =
        usual.empty() ? "no other rough to set it against" : "no rule better than the others";
  else
    out.words =
        out.cost < kSameCost
            ? fmt::format("{}: nothing against it, the others cost {:.1f}", out.rule, out.usual)
            : fmt::format("{}: {:.1f}, the others {:.1f}", out.rule, out.cost, out.usual);
  return out;
}

Standing weakestOf(const Rough& rough, const std::vector<Rough>& all) {
  Standing out;
  const CardLine* dearest = nullptr;
  for (const CardLine& line : rough.card)
    if (line.cost > (dearest == nullptr ? 0 : dearest->cost)) dearest = &line;
  if (dearest == nullptr) {
    out.words = "nothing found against it";
    return out;
  }
  out.rule = dearest->rule;
  out.panel = dearest->panel;
  out.cost = dearest->cost;
  out.usual = at(usualCosts(rough, all), dearest->rule);
  const bool placed = dearest->panel > 0 && !dearest->reason.starts_with("panel ");
  out.words = placed
                  ? fmt::format("{}, panel {}: {}", dearest->rule, dearest->panel, dearest->reason)
                  : fmt::format("{}: {}", dearest->rule, dearest->reason);
  return out;
}

}  // namespace tw
