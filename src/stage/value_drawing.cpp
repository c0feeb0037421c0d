#include <algorithm>

#include "geometry/polygon.h"
#include "stage/value_plan.h"

namespace tw {

namespace {

constexpr double kThinLine = 0.6;    // of the drawing's weight: the values are what counts here
constexpr double kWithinMm = 0.45;   // lines nearer to a black's edge than this are its outline
constexpr double kPaperLine = 0.75;  // lines left as paper must not close up in print

/// The stroke in pieces, those within the blacks left as paper.
void addBroken(const Stroke& stroke, const Region& black, std::vector<Stroke>& out) {
  const auto within = [&](std::size_t i) { return contains(black, stroke.points[i]); };
  std::size_t from = 0;
  while (from + 1 < stroke.points.size()) {
    const bool paper = within(from);
    std::size_t to = from + 1;
    while (to + 1 < stroke.points.size() && within(to) == paper) ++to;
    Stroke piece;
    piece.darkness = paper ? 0 : stroke.darkness;
    for (std::size_t i = from; i <= to; ++i) {
      piece.points.push_back(stroke.points[i]);
      piece.widths.push_back(stroke.widths[i] * (paper ? kPaperLine : kThinLine));
    }
    out.push_back(std::move(piece));
    from = to;
  }
}

}  // namespace

Drawing drawnInValues(PlannedPanel planned) {
  Drawing out;
  out.clip = std::move(planned.drawing.clip);
  out.tones = planned.plan.tones();
  for (std::size_t i = planned.marks; i < planned.drawing.tones.size(); ++i)
    out.tones.push_back(std::move(planned.drawing.tones[i]));
  const Region black = offset(planned.plan.regions.back(), -kWithinMm);
  for (const Stroke& stroke : planned.drawing.strokes)
    if (!stroke.points.empty()) addBroken(stroke, black, out.strokes);
  return out;
}

}  // namespace tw
