#include "stage/prop_mesh.h"

#include <algorithm>
#include <optional>

#include "stage/building_shapes.h"
#include "stage/held_props.h"
#include "stage/models.h"
#include "stage/set_words.h"
#include "stage/thing_shapes.h"

namespace tw {

namespace {

constexpr double kShapedDetail = 0.5;  // coarser pictures serve measures: plain bodies do

/// What is tipped over rests on the floor; nothing else of a thing shows below it.
void rest(Mesh& mesh, const SetProp& set) {
  double low = 0;
  for (const Vec3& p : mesh.points) low = std::min(low, p.y());
  if (set.pitchDeg != 0)
    for (Vec3& p : mesh.points) p.y() -= low;
  for (Vec3& p : mesh.points) p.y() = std::max(p.y(), 0.0);
}

/// What has a shape of its own under its name, standing on y = 0; nothing for plain bodies.
std::optional<Mesh> knownThing(const Prop& prop, bool inHand, double drawnM) {
  const std::string name = lowered(prop.name);
  const std::array<double, 3> s = handledSize(prop);
  const double whole = isRod(prop) && inHand ? std::min(s[0], 3.2) : s[0];
  const double length = drawnM > 0 ? drawnM : whole;
  if (isRod(prop) && s[0] > 0.6 && says(name, {"chain"}))
    return chainMesh(length, std::min(s[1], 0.09));
  if (isRod(prop) && says(name, {"rope", "line", "cable", "cord"}))
    return ropeMesh(length, std::clamp(s[1], 0.02, 0.05), !inHand);
  if (isRod(prop) && says(name, {"oar", "paddle"}))
    return oarMesh(length, std::clamp(s[1], 0.04, 0.06));
  if (says(name, {"lantern", "lamp"}) && prop.sizeM[1] < 0.8) return lanternMesh(prop.sizeM);
  if (says(name, {"knife", "dagger"})) return knifeMesh(prop.sizeM);
  if (says(name, {"helmet"})) return helmetMesh(prop.sizeM);
  if (name == "key") return keyMesh(prop.sizeM);
  return {};
}

}  // namespace

Opening passageOpening(const Beat& beat, const Prop& prop, double bodyFloor) {
  const bool doorway = prop.shape == "door" || prop.shape == "doorway" || bodyFloor < 0.4;
  Opening o;
  o.width = doorway ? std::clamp(prop.sizeM[0], 0.95, 1.6) : 1.45;
  o.sill = doorway ? 0 : std::max(0.3, bodyFloor - 0.5);
  o.height = doorway ? std::clamp(prop.sizeM[1], 2.05, 2.6) : 1.75;
  o.arched = isArched(beat, prop);
  return o;
}

Mesh propMesh(const Beat& beat, std::size_t index, const SetProp& set, double bodyFloor,
              const Mesh* model, double detail) {
  const Prop& prop = beat.props[index];
  const bool inHand = isInHand(beat, index);
  if (model != nullptr) {
    Mesh mesh = placed(modelMesh(*model, prop, isVessel(prop)), set.at, set.headingDeg,
                       set.pitchDeg, inHand);
    if (!inHand) rest(mesh, set);
    return mesh;
  }
  if (!passerOf(beat, index)) return propMesh(prop, set, inHand, detail);
  const Opening o = passageOpening(beat, prop, bodyFloor);
  const double thick = o.arched ? 0.5 : 0.25;
  return placed(wallMesh({o.width + 4.2, o.sill + o.height + 1.8, thick}, o),
                {set.at.x, 0, set.at.z}, set.headingDeg);
}

Mesh propMesh(const Prop& prop, const SetProp& set, bool inHand, double detail) {
  const bool bell = says(prop.name, {"bell"}) && prop.sizeM[1] > 0.6;
  if (!inHand && (bell || (isVessel(prop) && !says(prop.name, {"raft", "barge"})))) {
    const auto& size = prop.sizeM;
    constexpr double kAfloat = 0.62;  // the rest of the hull is under water
    Mesh mesh = bell ? bellMesh(size) : boatMesh({size[0], kAfloat * size[1], size[2]});
    mesh = placed(std::move(mesh), set.at, set.headingDeg, bell ? set.pitchDeg : 0);
    if (bell && set.pitchDeg != 0) rest(mesh, set);
    return mesh;
  }
  if (std::optional<Mesh> known = knownThing(prop, inHand, set.lengthM);
      known && detail >= kShapedDetail) {
    Mesh mesh = placed(std::move(*known), set.at, set.headingDeg, set.pitchDeg, inHand);
    if (!inHand) rest(mesh, set);
    return mesh;
  }
  if (!inHand) {
    Mesh mesh = placed(shapeMesh(prop.shape, prop.sizeM), set.at, set.headingDeg, set.pitchDeg);
    rest(mesh, set);
    return mesh;
  }
  const std::array<double, 3> s = handledSize(prop);
  const bool rod = isRod(prop);
  const double whole = rod ? std::min(s[0], 3.2) : prop.sizeM[1];
  const double length = set.lengthM > 0 ? set.lengthM : whole;
  Mesh mesh;
  if (rod) {
    const double thick = says(prop.name, {"rope", "line", "cable"}) ? std::min(s[1], 0.05) : s[1];
    mesh = detail < 0.5
               ? cylinderMesh({thick, length, thick}, 10)
               : shapeMesh(prop.shape == "box" ? "box" : "cylinder", {thick, length, s[2]});
  } else {
    mesh = shapeMesh(prop.shape, prop.sizeM);
  }
  return placed(std::move(mesh), set.at, set.headingDeg, set.pitchDeg, true);
}

}  // namespace tw
