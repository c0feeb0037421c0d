// Greedy choice by margin, as in maximal marginal relevance (Carbonell & Goldstein 1998,
// doi:10.1145/290941.291025): each next rough trades its score against its nearness to those
// chosen already. O(keep × roughs) comparisons.
#include "compose/choose_different.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "compose/layout_search.h"
#include "compose/layout_staging.h"
#include "geometry/polygon.h"

namespace tw {

namespace {

constexpr double kOtherTreatment = 0.25;  // of a page's shapes
constexpr double kSameMm = 0.5;           // outlines nearer than this are the same on paper
constexpr double kSameDegrees = 0.01;     // more than files round away

double shapesUnlike(const Layout& a, const Layout& b, const Sheet& sheet) {
  const double treatment = a.treatment == b.treatment ? 0 : kOtherTreatment;
  return std::min(1.0, unlikeness(a, b, sheet) + treatment);
}

bool isSameOutline(const Polygon& a, const Polygon& b) {
  const auto liesOn = [](const Polygon& inner, const Polygon& outer) {
    return std::ranges::all_of(inner.points,
                               [&](Point p) { return distanceToOutline(outer, p) < kSameMm; });
  };
  return liesOn(a, b) && liesOn(b, a);
}

bool isSameChoice(const StagingChoice& a, const StagingChoice& b) {
  const auto near = [](double x, double y) { return std::abs(x - y) < kSameDegrees; };
  return a.shot == b.shot && a.eye == b.eye && a.mirrored == b.mirrored &&
         a.placement == b.placement && near(a.sideDeg, b.sideDeg) && near(a.tiltDeg, b.tiltDeg) &&
         near(a.lensMm, b.lensMm);
}

bool isSamePose(const Staging& a, const Staging& b) {
  return std::ranges::equal(a.figures, b.figures, [](const SetFigure& f, const SetFigure& g) {
    return f.who == g.who && f.pose == g.pose && f.turnsDeg == g.turnsDeg &&
           std::abs(f.gazeDeg - g.gazeDeg) < kSameDegrees;
  });
}

}  // namespace

double unlikeness(const Layout& layout, const std::vector<StagingChoice>& choices,
                  const Measured& other, const Sheet& sheet) {
  double different = 0;
  for (std::size_t i = 0; i < choices.size(); ++i)
    if (!stagedAlike(choices[i], other.rough.panels[i].staging.choice)) different += 1;
  const double stagings = different / static_cast<double>(choices.size());
  return kShapesCount * shapesUnlike(layout, other.layout, sheet) + (1 - kShapesCount) * stagings;
}

double unlikeness(const Measured& a, const Measured& b, const Sheet& sheet) {
  std::vector<StagingChoice> choices;
  for (const RoughPanel& panel : a.rough.panels) choices.push_back(panel.staging.choice);
  return unlikeness(a.layout, choices, b, sheet);
}

bool sharesArrangement(const Layout& a, const Layout& b, const Sheet& sheet) {
  return (!a.tree.empty() && a.tree == b.tree) || unlikeness(a, b, sheet) < kTooNear;
}

bool isSamePage(const Measured& a, const Measured& b) {
  return std::ranges::equal(
      a.rough.panels, b.rough.panels, [](const RoughPanel& p, const RoughPanel& q) {
        return p.ground == q.ground && isSameOutline(p.outline, q.outline) &&
               isSameChoice(p.staging.choice, q.staging.choice) && isSamePose(p.staging, q.staging);
      });
}

std::vector<std::size_t> chooseDifferent(const std::vector<Measured>& roughs, const Sheet& sheet,
                                         std::size_t keep, double spread,
                                         const std::vector<Measured>& unlike) {
  std::vector<std::size_t> chosen;
  std::vector<double> nearest(roughs.size(), 1);
  for (std::size_t i = 0; i < roughs.size(); ++i)
    for (const Measured& other : unlike)
      nearest[i] = std::min(nearest[i], unlikeness(roughs[i], other, sheet));
  while (chosen.size() < std::min(keep, roughs.size())) {
    std::size_t best = roughs.size();
    double bestMargin = std::numeric_limits<double>::infinity();
    for (std::size_t i = 0; i < roughs.size(); ++i) {
      if (std::find(chosen.begin(), chosen.end(), i) != chosen.end()) continue;
      const double margin = roughs[i].rough.score - spread * nearest[i];
      if (margin < bestMargin) {
        bestMargin = margin;
        best = i;
      }
    }
    chosen.push_back(best);
    for (std::size_t i = 0; i < roughs.size(); ++i)
      nearest[i] = std::min(nearest[i], unlikeness(roughs[i], roughs[best], sheet));
  }
  return chosen;
}

}  // namespace tw
