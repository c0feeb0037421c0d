// A picture as vectors: what stage draws and press prints. It knows nothing of files or of the
// drawing library. Coordinates and widths in mm on the page.
#pragma once

#include <string>
#include <vector>

#include "geometry/shapes.h"

namespace tw {

/// An inked line whose width may change along it, as a pen's does.
struct Stroke {
  std::vector<Point> points;
  std::vector<double> widths;  ///< mm, one per point
  double darkness = 1;         ///< 0 paper … 1 black
};

/// A flat area.
struct Tone {
  Region region;
  double darkness = 0;  ///< 0 paper (covers what lies below) … 1 black
};

/// Painted in this order: tones in their order, then strokes in theirs. Everything is clipped
/// by `clip` unless that is empty.
struct Drawing {
  Region clip;
  std::vector<Tone> tones;
  std::vector<Stroke> strokes;
};

/// The filled outline of a stroke with round ends, for surfaces that only fill.
Polygon outlineOf(const Stroke& stroke);

}  // namespace tw
