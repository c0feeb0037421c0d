#include "stage/panel_sight.h"

#include "geometry/polygon.h"

namespace tw {

PanelSight::PanelSight(const std::vector<Solid>& all, const Camera& eye, const Polygon& outline,
                       int width, const Vec3& towardKey, LookFor what)
    : solids(all),
      camera(eye),
      panel(outline),
      frame(bounds(outline)),
      picture(render(all, eye, width, towardKey)) {
  inside.assign(picture.solid.size(), 1);
  const bool box = panel.points.size() == 4 && area(panel) > 0.999 * frame.area();
  for (int y = 0; y < picture.height && !box; ++y)
    for (int x = 0; x < picture.width; ++x)
      inside[static_cast<std::size_t>(y) * picture.width + static_cast<std::size_t>(x)] =
          contains(panel, onPage(x + 0.5, y + 0.5));
  for (const std::uint8_t in : inside) panelPixels += in;
  for (const Solid& solid : solids) {
    const bool counts = what == LookFor::Everything && (solid.figure >= 0 || solid.prop >= 0);
    maskOf.push_back(counts ? static_cast<int>(own.size()) : -1);
    if (counts) own.emplace_back(solid, camera, width);
  }
}

}  // namespace tw
