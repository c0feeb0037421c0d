// Which stretches of a solid's lines are seen, as smooth lines on the page. Stretches of one body
// that run into each other where its volumes join are made one line, as a pen would draw them.
#pragma once

#include <vector>

#include "stage/panel_view.h"
#include "stage/silhouette.h"

namespace tw {

struct SeenPoint {
  Point at;        ///< mm on the page
  double depth;    ///< m
  Vector outward;  ///< unit, on the page, away from the surface
  double gap;      ///< m from the line back to what is seen just outside it; kOpenGap = nothing
};
inline constexpr double kOpenGap = 10;

enum class LineEnd : std::uint8_t {
  Free,    ///< the fold fades into its surface, or the line simply ends
  Behind,  ///< it goes behind something nearer
  Frame,   ///< it leaves the picture
};

struct SeenLine {
  std::vector<SeenPoint> points;
  bool closed = false;
  double mmPerM = 0;  ///< scale of the page where the line begins
  LineKind kind = LineKind::Contour;
  LineEnd first = LineEnd::Free, last = LineEnd::Free;
};

/// `solid` is the index that the picture was rendered with.
std::vector<SeenLine> visibleLines(const Solid& solid, int index, const PanelView& view);

/// Stretches of one solid made lines as a pen would draw them: joined where they meet, doubles and
/// specks left out, smoothed.
std::vector<SeenLine> asDrawn(std::vector<SeenLine> stretches, double mmPerPx);

/// Length on the page, mm.
double lengthOf(const SeenLine& line);

}  // namespace tw
