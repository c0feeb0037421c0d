#include "stage/tied_things.h"

#include <doctest/doctest.h>

#include <numbers>

#include "stage/held_props.h"

namespace tw {
namespace {

Prop thing(const std::string& name, const std::string& shape, std::array<double, 3> size) {
  Prop prop;
  prop.id = prop.name = name;
  prop.shape = shape;
  prop.sizeM = size;
  return prop;
}

Beat hauling(const std::string& words) {
  Beat beat;
  beat.description = words;
  beat.props = {thing("chain", "cylinder", {0.08, 3, 0.08}),
                thing("bell", "cone", {1.6, 1.7, 1.6})};
  return beat;
}

}  // namespace

TEST_CASE("a line is tied to the heavy thing that the words say it runs to") {
  CHECK(tiedTo(hauling("Mara hauls on the chain, taut across the panel to the fallen bell."), 0) ==
        1);
  CHECK(tiedTo(hauling("The chain runs from the bell into the dark."), 0) == 1);
  CHECK(tiedTo(hauling("The chain hangs. She swims to the bell."), 0) == -1);
  CHECK(tiedTo(hauling("The bell rolls over the chain."), 0) == -1);
  Beat light = hauling("The chain runs to the bell.");
  light.props[1].sizeM = {0.2, 0.2, 0.2};
  CHECK(tiedTo(light, 0) == -1);
  Beat placed = hauling("The chain runs to the bell.");
  placed.props[1].placeM = {3, 0, 0};
  CHECK(tiedTo(placed, 0) == -1);
}

TEST_CASE("the taut line ends in both hands and at the thing it is tied to") {
  const Beat beat = hauling("She hauls on the chain, taut to the fallen bell.");
  Scene scene;
  scene.props.resize(2);
  scene.propBoxes.resize(2);
  scene.propMatters.assign(2, false);
  const Vec3 hands(0.3, 1.15, -0.2);
  tautTo(beat, 0, hands, 65, 0, scene);
  const SetProp& chain = scene.props[0];
  const double pitch = chain.pitchDeg * std::numbers::pi / 180;
  const Vec3 along = Vec3(0, std::cos(pitch), 0) + directionOf(chain.headingDeg) * std::sin(pitch);
  const Vec3 middle(chain.at.x, chain.at.y, chain.at.z);
  CHECK((middle - along * chain.lengthM / 2 - hands).norm() < 0.2);
  const Vec3 far = middle + along * chain.lengthM / 2;
  const Box3& bell = scene.propBoxes[1];
  CHECK((far.cwiseMax(bell.min).cwiseMin(bell.max) - far).norm() < 0.15);
}

}  // namespace tw
