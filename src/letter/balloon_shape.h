// The outlines in which copy stands: superellipses for speech, clouds for thoughts, bursts for
// shouts, boxes for captions. Each holds its lines with air around them. A whisper has the outline
// of speech, to be drawn dashed (common practice, no source).
#pragma once

#include <cstdint>
#include <vector>

#include "geometry/shapes.h"
#include "job/words.h"

namespace tw {

/// Exponent of a balloon's superellipse |x/a|ⁿ + |y/b|ⁿ = 1: between an ellipse (2), which wastes
/// its corners, and a box. Chosen by eye.
inline constexpr double kBalloonExponent = 2.4;

/// Half width of the superellipse of half axes a, b at height y from its middle.
double halfWidthAt(double y, double a, double b, double exponent = kBalloonExponent);

/// Shape about its own middle. The core holds the lines; bumps and spikes reach beyond it.
struct BalloonShape {
  CopyKind kind = CopyKind::Speech;
  double a = 0, b = 0;  ///< half axes of the core, or half sides of a box, mm
  double reach = 0;     ///< of bumps and spikes beyond the core, mm
  double turnDeg = 0;   ///< of lines set free
  std::uint64_t seed = 0;

  bool isBalloon() const;  ///< a rounded outline with, perhaps, a tail
  bool isFree() const { return kind == CopyKind::Sfx || kind == CopyKind::Title; }
  double halfWidth() const { return a + reach; }
  double halfHeight() const { return b + reach; }
  /// From the middle to the core's outline in that direction.
  double radiusToward(Vector direction) const;
};

/// Empty for copy set free.
Polygon outlineOf(const BalloonShape& shape, Point middle);

/// What the shape covers as a few rectangles that together contain it, about its middle.
std::vector<Rect> stripsOf(const BalloonShape& shape);
/// The same for any outline in its own place.
std::vector<Rect> stripsOf(const Polygon& outline, int count);

}  // namespace tw
