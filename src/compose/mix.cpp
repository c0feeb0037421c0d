#include "compose/mix.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "base/result.h"
#include "compose/kept_staging.h"
#include "compose/layout_of.h"
#include "compose/staging_table.h"
#include "geometry/polygon.h"

namespace tw {

namespace {

/// Strokes follow the picture: about its middle, by the scale that keeps circles round and
/// everything that was in the old frame in the new one.
std::vector<PenStroke> carried(std::vector<PenStroke> strokes, const Polygon& from,
                               const Polygon& to) {
  const Rect a = frameOf(from), b = frameOf(to);
  const double scale = std::min(b.width() / a.width(), b.height() / a.height());
  for (PenStroke& stroke : strokes) {
    for (Point& p : stroke.points) p = b.centre() + (p - a.centre()) * scale;
    for (double& width : stroke.widthsMm) width *= scale;
  }
  return strokes;
}

/// Takes over what the panel shows; its outline and copy stay.
void takePicture(const PageCase& page, const Stager& stager, const Layout& layout, std::size_t i,
                 const RoughPanel& from, RoughPanel& to) {
  to.staging = fitted(stager, stageRequest(page, i, layout), from.staging);
  to.strokes = carried(from.strokes, from.outline, to.outline);
}

std::size_t placedByHand(const RoughPanel& panel) {
  return static_cast<std::size_t>(std::ranges::count(panel.balloons, true, &PlacedBalloon::byHand));
}

}  // namespace

Mixed withPanelOf(const PageCase& page, const Stager& stager, const Rough& into, const Rough& from,
                  std::size_t panel) {
  ensure(showsBeatsOf(into, page) && showsBeatsOf(from, page) && panel < page.panels.size(),
         "only roughs of the same beats can be mixed");
  Mixed out{into, {}};
  RoughPanel& mixed = out.rough.panels[panel];
  takePicture(page, stager, layoutOf(into, page), panel, from.panels[panel], mixed);
  if (!into.panels[panel].strokes.empty())
    out.notes.push_back(fmt::format(
        "The strokes over panel {} of rough {} stay there: they were drawn over another picture.",
        panel + 1, into.name));
  if (placedByHand(mixed) > 0)
    out.notes.push_back(fmt::format(
        "Balloons that you placed in panel {} stay where they are; look at their tails.",
        panel + 1));
  return out;
}

Mixed withArrangementOf(const PageCase& page, const Stager& stager, const Rough& shapes,
                        const Rough& stagings) {
  ensure(showsBeatsOf(shapes, page) && showsBeatsOf(stagings, page),
         "only roughs of the same beats can be mixed");
  Mixed out{shapes, {}};
  const Layout layout = layoutOf(shapes, page);
  std::size_t reset = 0;
  for (std::size_t i = 0; i < out.rough.panels.size(); ++i) {
    RoughPanel& panel = out.rough.panels[i];
    reset += placedByHand(panel) + placedByHand(stagings.panels[i]);
    takePicture(page, stager, layout, i, stagings.panels[i], panel);
    panel.balloons.clear();
  }
  if (reset > 0)
    out.notes.push_back(fmt::format("{} placed by hand {} set anew: other shapes, other pictures.",
                                    reset == 1 ? "A balloon" : "Balloons",
                                    reset == 1 ? "is" : "are"));
  return out;
}

}  // namespace tw
