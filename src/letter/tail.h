// Tails: wedges that point from a balloon at a mouth or, for a voice from outside the panel, at
// its edge; strings of bubbles for thoughts; bridges between balloons of one speaker.
#pragma once

#include "letter/balloon_shape.h"

namespace tw {

/// How far from the balloon's edge to the mouth a tail runs: 50–60 % (facts, trade source).
inline constexpr double kTailShare = 0.55;

/// Where a tail starts on the core's outline and where it ends.
struct TailLine {
  Point from, to;
  double length() const { return (to - from).length(); }
};

/// A tail aimed at the mouth; `share` of the way from the balloon's edge.
TailLine tailLine(const BalloonShape& shape, Point middle, Point mouth, double share = kTailShare);

/// The tail's outline; its base lies inside the balloon so that both can be joined. `bend` 0 is a
/// straight wedge, 1 a gentle curve.
Polygon tailOutline(const BalloonShape& shape, Point middle, const TailLine& line, double bend = 1);

/// A short band that joins two balloons of one speaker.
Polygon bridge(const BalloonShape& a, Point aMiddle, const BalloonShape& b, Point bMiddle);

}  // namespace tw
