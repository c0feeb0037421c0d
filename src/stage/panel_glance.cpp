#include "stage/panel_glance.h"

#include <algorithm>

#include "stage/ground_contrast.h"
#include "stage/light_wish.h"
#include "stage/visibility.h"

namespace tw {

namespace {

constexpr double kDetail = 0.5;   // of meshes, as for measures
constexpr double kFewestPx = 10;  // that a thing must have alone, to say how much of it is seen

bool isBeforeLens(const Solid& solid, const Camera& camera) {
  return std::ranges::any_of(solid.mesh.points,
                             [&](const Vec3& p) { return camera.depth(p) > kNearM; });
}

std::vector<SeenThing> thingsIn(const PanelSight& sight, const Staging& staging) {
  std::vector<SeenThing> out(staging.props.size());
  for (std::size_t i = 0; i < out.size(); ++i) out[i].prop = staging.props[i].prop;
  for (std::size_t k = 0; k < sight.solids.size(); ++k) {
    const Solid& solid = sight.solids[k];
    if (solid.prop < 0) continue;
    SeenThing& thing = out[static_cast<std::size_t>(solid.prop)];
    const PlainShares seen = plainShares(sight, static_cast<int>(k));
    thing.visible = seen.visible;
    thing.share = seen.share;
    thing.isTooFine = isBeforeLens(solid, sight.camera) &&
                      pixelsAlone(solid, sight.camera, sight.picture.width) < kFewestPx;
  }
  return out;
}

}  // namespace

PanelGlance glanceAt(const Stager& stager, const RoughPanel& panel, const Beat& beat,
                     const LightWords& lights, int width) {
  const Rect frame = frameOf(panel.outline);
  const Camera camera(panel.staging.camera, frame.width() / frame.height());
  const Lighting light = lightOf(panel.staging, beat, lights);
  const std::vector<Solid> solids = stager.solidsOf(panel.staging, beat, kDetail);
  const PanelSight sight(solids, camera, panel.outline, width, towardLamp(light.key, camera),
                         LookFor::Shares);
  PanelGlance glance;
  glance.things = thingsIn(sight, panel.staging);
  GreyPicture& out = glance.grey;
  out.width = sight.picture.width;
  out.height = sight.picture.height;
  out.origin = frame.min;
  out.mmPerPx = sight.mmPerPx();
  out.light = lightnessPicture(sight, moodOf(beat.setting), light);
  for (std::size_t i = 0; i < out.light.size(); ++i)
    out.light[i] = sight.inside[i] ? out.light[i] / 100 : 1.0f;
  return glance;
}

}  // namespace tw
