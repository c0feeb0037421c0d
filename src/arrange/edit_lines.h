// The lines of a page that a hand can move: gutters with every border that lies on them, and the
// outer borders. Found from outlines alone, so a page that was already edited by hand is read like
// one that was laid out. Borders on one line move as one; that keeps every gutter as wide as it is.
#pragma once

#include <compare>
#include <cstddef>
#include <optional>
#include <vector>

#include "geometry/shapes.h"
#include "job/sheet.h"

namespace tw {

/// One panel as page editing sees it. Only panels on the same layer meet.
struct EditPanel {
  Polygon outline;      ///< convex
  bool ground = false;  ///< lies under the others
  bool operator==(const EditPanel&) const = default;
};

/// A border of a panel: from point `side` of its outline to the next.
struct PanelSide {
  std::size_t panel = 0, side = 0;
  auto operator<=>(const PanelSide&) const = default;
};

/// A border with its directions.
struct SideLine {
  Point a, b;
  Vector along;  ///< unit, from a to b
  Vector out;    ///< unit, away from the panel
  Point middle() const { return between(a, b, 0.5); }
};
SideLine sideLine(const Polygon& outline, std::size_t side);

/// Borders that move together.
struct EditLine {
  bool gutter = false;  ///< between panels; else the outer border of a panel, or of several in line
  bool joined = false;  ///< runs on across other gutters: more than one part in line
  std::vector<PanelSide> sides;
  Point from, to;           ///< the middle of the gutter, or the border, from end to end
  Vector across;            ///< unit, at right angles
  Vector fromRuns, toRuns;  ///< unit: the border along which each end can slide
};

/// The outline without points that lie on a straight border.
Polygon cleaned(const Polygon& outline);

/// Width that a gutter should have whose borders look along `out`, mm.
double gutterFor(const Sheet& sheet, Vector out);

/// Every gutter part and outer border, then the joined ones, in the order of their first border.
/// Outlines must be cleaned.
std::vector<EditLine> editLines(const std::vector<EditPanel>& panels, const Sheet& sheet);

/// Where two lines meet; nothing when they are within half a degree of parallel.
std::optional<Point> meeting(Point a, Vector alongA, Point b, Vector alongB);

/// Twice the signed area; > 0 for outlines that run clockwise on the page.
double turning(const Polygon& outline);

}  // namespace tw
