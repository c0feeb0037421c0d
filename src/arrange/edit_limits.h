// How far a page's panels may be moved: never over each other or nearer than a gutter, never under
// the sheet's least size, never off the bleed, always convex. What was already worse than that may
// stay as it is, but gets no worse.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "arrange/edit_lines.h"

namespace tw {

/// A rigid movement of borders: shifted, then turned about a point.
struct RigidMove {
  Vector shift;
  Point pivot;
  double turn = 0;  ///< radians, > 0 from x to y
  /// The same movement, made only a part of the way.
  RigidMove part(double share) const { return {shift * share, pivot, turn * share}; }
};

/// The outlines with those borders moved and every corner on them found again; nothing when two
/// neighbouring borders no longer meet.
std::optional<std::vector<EditPanel>> withMoved(const std::vector<EditPanel>& panels,
                                                const std::vector<PanelSide>& sides,
                                                const RigidMove& move);

/// Why `after` may not follow `before`, as a sentence for the artist; nothing when it may. Panels
/// are called by their number in reading order.
std::optional<std::string> complaint(const std::vector<EditPanel>& before,
                                     const std::vector<EditPanel>& after, const Sheet& sheet);

/// Gap between two convex outlines beyond the gutter that should be there, mm; < 0 when nearer.
double spareGap(const Polygon& a, const Polygon& b, const Sheet& sheet);

/// True when some side of the outline runs to the bleed.
bool runsToBleed(const Polygon& outline, const Sheet& sheet);

}  // namespace tw
