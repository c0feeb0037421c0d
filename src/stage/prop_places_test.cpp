#include "stage/prop_places.h"

#include <doctest/doctest.h>

namespace tw {
namespace {

Prop thing(const std::string& name, std::array<double, 3> size) {
  Prop prop;
  prop.id = prop.name = name;
  prop.sizeM = size;
  return prop;
}

Scene placed(const Beat& beat) {
  Scene scene;
  scene.actors.resize(beat.figures.size());
  PropPlaces(beat, StagingChoice{}, false, scene).place();
  return scene;
}

}  // namespace

TEST_CASE("a thing stands where the artist says, whoever uses it") {
  Beat beat;
  beat.figures.push_back({"mara", "reach", "reaches for", "crate"});
  beat.props.push_back(thing("crate", {0.6, 0.5, 0.6}));
  beat.props[0].placeM = {2, 0, 1.5};
  beat.props[0].turnDeg = 30;
  const Scene scene = placed(beat);
  CHECK(scene.props[0].at.x == 2);
  CHECK(scene.props[0].at.z == 1.5);
  CHECK(scene.props[0].headingDeg == 30);
}

TEST_CASE("what a figure reaches for stands within arm's reach and matters to the camera") {
  Beat beat;
  beat.figures.push_back({"mara", "reach", "reaches for", "crate"});
  beat.props.push_back(thing("crate", {0.6, 0.5, 0.6}));
  const Scene scene = placed(beat);
  CHECK(std::hypot(scene.props[0].at.x, scene.props[0].at.z) < 1.3);
  CHECK(scene.propMatters[0]);
}

TEST_CASE("things that nobody uses stand clear of the figures and of each other") {
  Beat beat;
  beat.figures.push_back({"mara", "stand", "", ""});
  beat.props = {thing("crate", {0.6, 0.5, 0.6}), thing("barrel", {0.6, 0.9, 0.6})};
  const Scene scene = placed(beat);
  CHECK(std::abs(scene.props[0].at.x) > 0.6);
  CHECK(scene.props[0].at.x * scene.props[1].at.x < 0);
  CHECK_FALSE(scene.propMatters[0]);
}

}  // namespace tw
