#include "review/panel_rules.h"

#include <algorithm>
#include <cstdlib>

#include "geometry/polygon.h"

namespace tw {

namespace {

bool shareFigure(const Beat& a, const Beat& b) {
  for (const BeatFigure& f : a.figures)
    for (const BeatFigure& g : b.figures)
      if (f.who == g.who) return true;
  return false;
}

double rankOf(const RoughPanel& seen, const SeenFigure& focus) {
  double tallest = focus.headMm;
  for (const SeenFigure& figure : seen.figures) tallest = std::max(tallest, figure.headMm);
  return tallest > 0 ? focus.headMm / tallest : 1;
}

/// How much of a body each shot size shows when nothing stands before it: what lies above the cut
/// line (facts: staging §7.2). A close-up is not to be blamed for the legs it leaves out.
double seenAtMost(ShotSize shot) {
  constexpr double kShare[] = {0.06, 0.12, 0.25, 0.4, 0.65, 1, 1, 1};
  return kShare[static_cast<std::size_t>(shot)];
}

double seenOfShot(double visible, ShotSize shot) {
  return std::min(1.0, visible / seenAtMost(shot));
}

/// Share of those who speak on the panel whom the picture really shows; quick estimates do not know
/// what stands before a speaker.
double speakersShown(const PanelCase& panel, const RoughPanel& seen, ShotSize shot) {
  constexpr double kShown = 0.2;  // of what the shot can show of a body
  double speakers = 0, shown = 0;
  for (const CopyItem& item : panel.beat.copy) {
    if (item.speaker.empty() || item.offPanel || item.kind == CopyKind::Caption) continue;
    const SeenFigure* figure = focusFigure(seen, item.speaker);
    if (figure == nullptr) continue;  // not among the beat's figures: a voice
    ++speakers;
    shown += std::min(1.0, seenOfShot(figure->visible, shot) / kShown);
  }
  return speakers > 0 ? shown / speakers : 1;
}

/// The parts of the numbers that no picture changes.
PanelNumbers common(const Variant& variant, double airWanted, const Arrival& arrival) {
  PanelNumbers n;
  n.askedShot = variant.askedShot;
  n.askedEye = variant.askedEye;
  n.airTop = variant.airTop;
  n.airWanted = airWanted;
  n.speakersInOrder = variant.speakersInOrder;
  n.facesSeen = variant.facesSeen;
  n.reach = variant.reach;
  n.leadStrength = variant.leadStrength;
  n.arrival = arrival;
  return n;
}

}  // namespace

PairNumbers pairOf(const PanelCase& a, const Variant& va, const PanelCase& b, const Variant& vb) {
  PairNumbers n;
  n.shotSteps = std::abs(static_cast<int>(va.choice.shot) - static_cast<int>(vb.choice.shot));
  n.axisBefore = va.axisSide;
  n.axisAfter = vb.axisSide;
  const double sideA = va.choice.mirrored ? -va.choice.sideDeg : va.choice.sideDeg;
  const double sideB = vb.choice.mirrored ? -vb.choice.sideDeg : vb.choice.sideDeg;
  const int eyeSteps = std::abs(static_cast<int>(va.choice.eye) - static_cast<int>(vb.choice.eye));
  n.viewDegrees = std::abs(sideA - sideB) + 25.0 * eyeSteps;
  n.sameFigures = shareFigure(a.beat, b.beat);
  return n;
}

double airWantedOf(const PanelCase& panel, double panelAreaMm2) {
  return std::min(0.9, panel.copy.areaMm2 / std::max(1.0, panelAreaMm2 / 3));
}

PanelNumbers quickNumbers(const PanelCase& panel, const Variant& variant, const Rect& frame,
                          const Arrival& arrival) {
  PanelNumbers n = common(variant, airWantedOf(panel, frame.area()), arrival);
  n.headMm = variant.focusHead * frame.height();
  n.rank = variant.focusRank;
  n.visible = seenOfShot(variant.visible, variant.choice.shot);
  n.cut = variant.cutCost;
  n.whole = variant.focusWhole;
  n.unobscured = variant.visible;
  return n;
}

const SeenFigure* focusFigure(const RoughPanel& panel, const std::string& focus) {
  for (const SeenFigure& figure : panel.figures)
    if (figure.who == focus) return &figure;
  return nullptr;
}

PanelNumbers exactNumbers(const PanelCase& panel, const Variant& variant, const RoughPanel& seen,
                          const Arrival& arrival, double covered) {
  PanelNumbers n = common(variant, airWantedOf(panel, area(seen.outline)), arrival);
  n.leadStrength = seen.lead.strength;
  n.facesSeen *= speakersShown(panel, seen, variant.choice.shot);
  n.cut = variant.cutCost;
  const SeenFigure* focus = focusFigure(seen, panel.focus);
  if (focus == nullptr) {
    n.visible = n.unobscured = panel.focus.empty() ? 1 : 0;
    n.whole = panel.focus.empty();
    return n;
  }
  n.headMm = focus->headMm;
  n.rank = rankOf(seen, *focus);
  n.visible = seenOfShot(focus->visible, variant.choice.shot);
  n.whole = focus->cut == "whole";
  n.unobscured = focus->visible * (1 - covered);
  return n;
}

}  // namespace tw
