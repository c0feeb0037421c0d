// What each measure costs before weighting: pure functions from a measured number to a cost, 0
// when all is well, about 1 when clearly wrong. The search and the score card share them, so a
// rough is ranked by what its card says. Shapes of the curves: our own judgement, no source.
#pragma once

#include <algorithm>
#include <cmath>

#include "review/continuity.h"

namespace tw::cost {

inline double square(double v) {
  return v * v;
}

/// Area share of a panel against the share its weight asks for: (log2 ratio)², so half or double
/// costs 1.
inline double areaFollowsWeight(double share, double wanted) {
  return square(std::log2(std::max(share, 1e-6) / std::max(wanted, 1e-6)));
}

/// Aspect against the aspect wished: (log2 ratio)², the first quarter of a doubling free.
inline double panelShape(double aspect, double wished) {
  if (wished <= 0) return 0;
  return square(std::max(0.0, std::abs(std::log2(aspect / wished)) - 0.25));
}

/// Share by which a demand is missed: 0 when have ≥ want.
inline double shortfall(double have, double want) {
  return want > 0 ? std::max(0.0, 1 - have / want) : 0;
}

/// 1 − share of readers who follow, from a free tenth on.
inline double readingOrder(double followed) {
  return std::max(0.0, 0.9 - followed) / 0.9;
}

/// Steps between the shot (or eye height) and the one asked for.
inline double stepsOff(double steps) {
  return steps;
}

/// Steps from the shot that suits such a beat when nobody asked for one: the first is free, the
/// others cost half.
inline double stepsOffCustom(double steps) {
  return 0.5 * std::max(0.0, steps - 1);
}

/// How small the focus is beside the tallest figure seen, and how much of it is hidden.
inline double focusProminent(double rank, double visible) {
  return std::max(0.0, 1 - rank) + std::max(0.0, 0.75 - visible);
}

/// Each joint on the frame's edge.
inline double jointCut() {
  return 0.5;
}

/// A touch costs a third, contours that run along each other for 4 cm or more all.
inline double tangent(double lengthMm) {
  return std::min(1.0, 0.33 + 0.67 * lengthMm / 40);
}

inline double roomForCopy(double airTop, double wanted) {
  return shortfall(airTop, wanted);
}

/// Mean projected limb length: under two thirds the gesture is foreshortened away.
inline double poseReads(double reach) {
  return std::max(0.0, 0.7 - reach) / 0.7;
}

/// A weak lead cannot leak: costs scale with its strength.
inline double handedOn(double next, double strength) {
  return (1 - next) * strength;
}
inline double leaksOff(double off, double strength) {
  return off * strength;
}

/// Same shot size twice running costs 1, one step 0.3, more nothing.
inline double shotChanges(int steps) {
  return steps == 0 ? 1.0 : steps == 1 ? 0.3 : 0.0;
}

/// Crossing to the other side of the axis.
inline double axisKept(double before, double after) {
  return before * after < 0 ? 1.0 : 0.0;
}

/// Change of view under 30° with no change of shot size (the number is nominal, facts: staging).
inline double viewChanges(double degrees, int shotSteps) {
  return shotSteps != 0 ? 0 : std::max(0.0, 1 - std::abs(degrees) / 30);
}

/// A run of more than two equal shots, and too little variety over the page.
inline double rhythm(int longestRun, double variety) {
  return 0.5 * std::max(0, longestRun - 2) + std::max(0.0, 0.5 - variety);
}

inline double over(double have, double most) {
  return most > 0 ? std::max(0.0, have / most - 1) : 0;
}

/// 1 for what is plainly wrong, less for what may be meant; the same for all roughs of a page.
inline double continuity(Severity severity) {
  return severity == Severity::Must ? 1 : severity == Severity::Should ? 0.5 : 0.1;
}

}  // namespace tw::cost
