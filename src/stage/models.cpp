#include "stage/models.h"

#include <algorithm>

#include "stage/held_props.h"

namespace tw {

namespace {

struct Extent {
  Vec3 low = Vec3::Constant(1e9), high = Vec3::Constant(-1e9);
};
Extent extentOf(const Mesh& mesh) {
  Extent e;
  for (const Vec3& p : mesh.points) {
    e.low = e.low.cwiseMin(p);
    e.high = e.high.cwiseMax(p);
  }
  return e;
}

/// Read as y up, the file's z points to the camera; its −y is the front of what has z up.
Vec3 upright(const Vec3& v) {
  return {v.x(), -v.z(), v.y()};
}

}  // namespace

std::string modelNameOf(const std::string& name) {
  std::string out = name;
  for (char& c : out) {
    if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
    if (c == ' ' || c == '_') c = '-';
  }
  return out;
}

Mesh modelMesh(const Mesh& model, const Prop& prop, bool floats) {
  Mesh mesh = model;
  if (prop.up == "z")
    for (auto* list : {&mesh.points, &mesh.normals})
      for (Vec3& v : *list) v = upright(v);
  const Extent e = extentOf(mesh);
  const bool keepsWaterline = floats && e.low.y() < 0 && e.high.y() > 0;
  const Vec3 foot((e.low.x() + e.high.x()) / 2, keepsWaterline ? 0 : e.low.y(),
                  (e.low.z() + e.high.z()) / 2);
  const double high = e.high.y() - foot.y();
  const double scale = prop.heightM > 0 && high > 0 ? prop.heightM / high : 1;
  for (Vec3& p : mesh.points) p = scale * (p - foot);
  return mesh;
}

bool hasModel(const Beat& beat, const Models& models) {
  return !models.empty() && std::ranges::any_of(beat.props, [&](const Prop& prop) {
    return !modelNameFor(prop, models).empty();
  });
}

Beat sizedByModels(Beat beat, const Models& models) {
  for (Prop& prop : beat.props) {
    const auto model = models.find(modelNameFor(prop, models));
    if (model == models.end()) continue;
    const Extent e = extentOf(modelMesh(model->second, prop, isVessel(prop)));
    const Vec3 size = (e.high - e.low).cwiseMax(1e-3);
    prop.sizeM = {size.x(), std::max(e.high.y(), 1e-3), size.z()};  // over floor or water
  }
  return beat;
}

}  // namespace tw
