#include "stage/panel_grey.h"

#include "stage/ground_contrast.h"
#include "stage/light_wish.h"

namespace tw {

namespace {

constexpr double kDetail = 0.5;  // of meshes, as for measures

}  // namespace

GreyPicture greyOf(const Stager& stager, const RoughPanel& panel, const Beat& beat,
                   const LightWords& lights, int width) {
  const Rect frame = frameOf(panel.outline);
  const Camera camera(panel.staging.camera, frame.width() / frame.height());
  const Lighting light = lightOf(panel.staging, beat, lights);
  const std::vector<Solid> solids = stager.solidsOf(panel.staging, beat, kDetail);
  const PanelSight sight(solids, camera, panel.outline, width, towardLamp(light.key, camera),
                         LookFor::Shares);
  GreyPicture out;
  out.width = sight.picture.width;
  out.height = sight.picture.height;
  out.origin = frame.min;
  out.mmPerPx = sight.mmPerPx();
  out.light = lightnessPicture(sight, moodOf(beat.setting), light);
  for (std::size_t i = 0; i < out.light.size(); ++i)
    out.light[i] = sight.inside[i] ? out.light[i] / 100 : 1.0f;
  return out;
}

}  // namespace tw
