// The rules that look at one panel or at two panels running. The search fills the numbers from
// quick estimates, the score card from exact pictures; both pay by the same functions.
#pragma once

#include "read/handed_on.h"
#include "review/costs.h"
#include "review/page_case.h"
#include "review/rules.h"
#include "stage/exact_measures.h"

namespace tw {

/// What is measured of one staged panel.
struct PanelNumbers {
  double askedShot = 0, askedEye = 0;
  double headMm = 0;
  double rank = 1, visible = 1;
  double cut = 0;
  bool whole = true;
  double unobscured = 1;  ///< share of the focus figure that nothing covers
  double airTop = 1, airWanted = 0;
  double speakersInOrder = 1;
  double facesSeen = 1;
  double reach = 1;
  double leadStrength = 0;
  Arrival arrival;
};

/// Calls pay(rule, weighted cost) for each rule about one panel; costs may be 0.
template <class Pay>
void payPanel(const PanelCase& panel, const PanelNumbers& n, const RuleBook& book, Pay pay) {
  const auto give = [&](RuleId rule, double c) { pay(rule, book.weight(rule) * c); };
  give(RuleId::AskedShot,
       panel.beat.shot ? cost::stepsOff(n.askedShot) : cost::stepsOffCustom(n.askedShot));
  give(RuleId::AskedEyeHeight, panel.beat.eye ? cost::stepsOff(n.askedEye) : 0);
  const bool figure = !panel.focus.empty();
  give(RuleId::HeadHeight, figure ? cost::shortfall(n.headMm, panel.leastHeadMm) : 0);
  give(RuleId::LargestFigure, panel.largest ? std::max(0.0, 1 - n.rank) : 0);
  give(RuleId::FocusProminent, figure ? cost::focusProminent(n.rank, n.visible) : 0);
  give(RuleId::FrameCuts, n.cut);
  give(RuleId::WholeFigure, panel.whole && !n.whole ? 1 - 0.5 * n.visible : 0);
  give(RuleId::Liftable, panel.liftable ? cost::shortfall(n.unobscured, kLiftableVisible) : 0);
  give(RuleId::RoomForCopy, cost::roomForCopy(n.airTop, n.airWanted));
  give(RuleId::SpeakersInOrder, 1 - n.speakersInOrder);
  give(RuleId::FacesSeen, 1 - n.facesSeen);
  give(RuleId::PoseReads, figure ? cost::poseReads(n.reach) * (panel.dominant ? 2 : 1) : 0);
  give(RuleId::HandedOn, cost::handedOn(n.arrival.next, n.leadStrength));
  give(RuleId::LeaksOff, cost::leaksOff(n.arrival.off, n.leadStrength));
}

/// What is measured of two panels running.
struct PairNumbers {
  int shotSteps = 2;
  double axisBefore = 0, axisAfter = 0;
  double viewDegrees = 90;
  bool sameFigures = false;
};

PairNumbers pairOf(const PanelCase& a, const Variant& va, const PanelCase& b, const Variant& vb);

template <class Pay>
void payPair(const PairNumbers& n, const RuleBook& book, Pay pay) {
  const auto give = [&](RuleId rule, double c) { pay(rule, book.weight(rule) * c); };
  give(RuleId::ShotChanges, cost::shotChanges(n.shotSteps));
  give(RuleId::AxisKept, n.sameFigures ? cost::axisKept(n.axisBefore, n.axisAfter) : 0);
  give(RuleId::ViewChanges, n.sameFigures ? cost::viewChanges(n.viewDegrees, n.shotSteps) : 0);
}

/// The upper third of the panel that its copy would fill, 0…1.
double airWantedOf(const PanelCase& panel, double panelAreaMm2);

/// Numbers from a quick estimate; the lead's arrival is given.
PanelNumbers quickNumbers(const PanelCase& panel, const Variant& variant, const Rect& frame,
                          const Arrival& arrival);
/// Numbers from an exact picture. `covered` is the share of the focus figure that balloons and
/// insets cover.
PanelNumbers exactNumbers(const PanelCase& panel, const Variant& variant, const RoughPanel& seen,
                          const Arrival& arrival, double covered);

/// The figure that the panel is about, or null.
const SeenFigure* focusFigure(const RoughPanel& panel, const std::string& focus);

}  // namespace tw
