#include "stage/panel_light.h"

#include "stage/light_wish.h"

namespace tw {

std::vector<Solid> drawnSolids(const Stager& stager, const RoughPanel& panel, const Beat& beat,
                               const std::string& focus) {
  std::vector<Solid> solids = stager.solidsOf(panel.staging, beat, 1);
  for (Solid& solid : solids) {
    if (solid.figure < 0) continue;
    const std::string& who = panel.staging.figures[static_cast<std::size_t>(solid.figure)].who;
    solid.isFocus = who == focus || (focus.empty() && solid.figure == 0);
  }
  return solids;
}

PlannedPanel plannedPanel(const Stager& stager, const RoughPanel& panel, const Beat& beat,
                          const std::string& focus, const DrawOptions& options,
                          const LightWords& lights) {
  const Rect frame = frameOf(panel.outline);
  DrawOptions own = options;
  if (own.setting.empty()) own.setting = beat.setting;
  return drawWithValues(drawnSolids(stager, panel, beat, focus),
                        Camera(panel.staging.camera, frame.width() / frame.height()), frame,
                        panel.outline, own, lightOf(panel.staging, beat, lights));
}

}  // namespace tw
