// Visibility.
//
// 1. A figure's own picture (own_mask.h) is what it would show alone, beyond the frame too; a
//    limb's is that of the limb alone, without the rest of the body.
// 2. Visible share = pixels of the panel's picture that are the figure's (or the limb's) over those
//    of its own picture: visible fraction = visible px / unoccluded px (facts: staging §8,
//    [derived]).
// 3. Each pixel of the own picture that lies in the panel and shows something else is charged to
//    what it shows; those beyond the panel's edge are charged to the frame.
// The denominators know of no other thing, so what is added before a figure can only take away.
// Cost: one look per pixel and figure. Does badly: nothing thinner than a pixel is seen.
#include "stage/visibility.h"

#include <algorithm>

namespace tw {

PlainShares plainShares(const PanelSight& sight, int index) {
  double shown = 0;
  for (std::size_t i = 0; i < sight.inside.size(); ++i)
    shown += sight.inside[i] && sight.picture.solid[i] == index;
  const OwnMask* own = sight.mask(index);
  const double alone = own ? own->pixels()
                           : pixelsAlone(sight.solids[static_cast<std::size_t>(index)],
                                         sight.camera, sight.picture.width);
  return {alone > 0 ? std::min(1.0, shown / alone) : 0,
          sight.panelPixels > 0 ? shown / sight.panelPixels : 0};
}

Visibility visibilityOf(const PanelSight& sight, int index) {
  const OwnMask& own = *sight.mask(index);
  Visibility out;
  PerLimb<double> seen{};
  double visible = 0, inPanel = 0, met = 0;
  const Picture& picture = sight.picture;
  std::vector<const OwnMask*> others;
  for (std::size_t k = 0; k < sight.solids.size(); ++k)
    if (sight.solids[k].figure >= 0 && static_cast<int>(k) != index)
      others.push_back(sight.mask(static_cast<int>(k)));
  for (int y = 0; y < picture.height; ++y)
    for (int x = 0; x < picture.width; ++x) {
      const std::size_t i =
          static_cast<std::size_t>(y) * picture.width + static_cast<std::size_t>(x);
      if (!sight.inside[i]) continue;
      const bool shown = picture.solid[i] == index;
      if (shown) {
        ++visible;
        ++seen[static_cast<std::size_t>(limbOf(static_cast<BodyPart>(picture.part[i])))];
      }
      const Point place = sight.place(x, y);
      if (own.at(place) == 0) continue;
      ++inPanel;
      if (!shown && picture.solid[i] >= 0) out.hiddenBy[picture.solid[i]] += 1;
      met += std::any_of(others.begin(), others.end(),
                         [&](const OwnMask* other) { return other->at(place) != 0; });
    }
  const auto shareOf = [](double some, double all) {
    return all > 0 ? std::clamp(some / all, 0.0, 1.0) : 0;
  };
  out.visible = shareOf(visible, own.pixels());
  out.share = shareOf(visible, sight.panelPixels);
  out.overlap = shareOf(met, own.pixels());
  out.cutOff = own.pixels() > 0 ? 1 - shareOf(inPanel, own.pixels()) : 0;
  for (auto& [solid, pixels] : out.hiddenBy) pixels = shareOf(pixels, own.pixels());
  for (std::size_t limb = 0; limb < kLimbs; ++limb)
    out.limbs[limb] = shareOf(seen[limb], own.pixels(static_cast<Limb>(limb)));
  return out;
}

}  // namespace tw
