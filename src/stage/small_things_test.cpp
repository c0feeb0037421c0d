#include <doctest/doctest.h>

#include <algorithm>

#include "stage/held_props.h"
#include "stage/prop_mesh.h"
#include "stage/thing_shapes.h"

namespace tw {
namespace {

Prop thing(const std::string& name, std::array<double, 3> size) {
  Prop prop;
  prop.id = prop.name = name;
  prop.shape = "cylinder";
  prop.sizeM = size;
  return prop;
}

double heightOf(const Mesh& mesh) {
  double high = 0;
  for (const Vec3& p : mesh.points) high = std::max(high, p.y());
  return high;
}

bool isSound(const Mesh& mesh) {
  return std::all_of(mesh.points.begin(), mesh.points.end(),
                     [](const Vec3& p) { return p.allFinite() && p.y() > -0.02; }) &&
         std::all_of(mesh.normals.begin(), mesh.normals.end(),
                     [](const Vec3& n) { return std::abs(n.norm() - 1) < 1e-6; });
}

}  // namespace

TEST_CASE("small things fill their height, stand on the ground and have unit normals") {
  for (const Mesh& mesh :
       {ropeMesh(3, 0.05, true), ropeMesh(3, 0.05, false), lanternMesh({0.18, 0.34, 0.18}),
        knifeMesh({0.05, 0.3, 0.02}), helmetMesh({0.3, 0.32, 0.3}), oarMesh(2.4, 0.05),
        keyMesh({0.03, 0.09, 0.01})})
    CHECK(isSound(mesh));
  CHECK(heightOf(lanternMesh({0.18, 0.34, 0.18})) == doctest::Approx(0.34).epsilon(0.03));
  CHECK(heightOf(knifeMesh({0.05, 0.3, 0.02})) == doctest::Approx(0.3).epsilon(0.01));
  CHECK(heightOf(helmetMesh({0.3, 0.32, 0.3})) == doctest::Approx(0.32).epsilon(0.02));
}

TEST_CASE("a rope and a chain are drawn as such also when nobody holds them") {
  for (const char* name : {"rope", "chain"}) {
    const Prop prop = thing(name, {0.05, 3, 0.05});
    const Mesh mesh = propMesh(prop, SetProp{}, false, 1);
    CHECK(mesh.triangles.size() > 4 * shapeMesh("cylinder", prop.sizeM).triangles.size());
  }
}

TEST_CASE("a close-up of a hand or glove on a thing puts that thing into the hand") {
  Beat beat;
  beat.description = "Extreme close-up. Her glove on the chain.";
  beat.shot = ShotSize::ExtremeCloseUp;
  beat.figures.push_back({"ines", "float", "", ""});
  beat.props.push_back(thing("chain", {0.08, 3, 0.08}));
  CHECK(asksForHand(beat));
  CHECK(isInHand(beat, 0));
  beat.description = "Extreme close-up. Her face, the chain behind.";
  CHECK_FALSE(isInHand(beat, 0));
}

TEST_CASE("a close-up of something long shows a piece of the thing named first") {
  Beat beat;
  beat.shot = ShotSize::CloseUp;
  beat.props.push_back(thing("chain", {0.08, 3, 0.08}));
  Scene scene;
  scene.propBoxes.push_back({{-0.04, 0, -0.04}, {0.04, 3, 0.04}});
  CHECK(mainThingOf(beat, scene).max.y() - mainThingOf(beat, scene).min.y() < 0.7);
  beat.shot = ShotSize::Long;
  CHECK(mainThingOf(beat, scene).max.y() == 3);
}

}  // namespace tw
