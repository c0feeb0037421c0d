// share = area(shape ∩ band) / area(shape), for each face's outline and each balloon's. Cost: one
// clipping for each. Does badly: a face of which the binding takes an ear counts like one that
// loses its nose; the share tells them apart.
#include "read/fold.h"

#include "geometry/polygon.h"

namespace tw {

namespace {

double shareIn(const Polygon& shape, const Rect& band) {
  const double whole = area(shape);
  return whole > 0 ? area(common({shape}, {polygonOf(band)})) / whole : 0;
}

}  // namespace

std::vector<InFold> lostInFold(const std::vector<RoughPanel>& panels, const Rect& band,
                               double least) {
  std::vector<InFold> out;
  if (band.width() <= 0) return out;
  for (std::size_t i = 0; i < panels.size(); ++i) {
    const auto add = [&](bool isFace, const std::string& name, const Polygon& shape) {
      const double share = shareIn(shape, band);
      if (share > least) out.push_back({i, isFace, name, share, shape});
    };
    for (const SeenFigure& figure : panels[i].figures) add(true, figure.who, figure.face);
    for (const PlacedBalloon& balloon : panels[i].balloons)
      add(false, balloon.item, balloon.outline);
  }
  return out;
}

}  // namespace tw
