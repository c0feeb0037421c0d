#include "stage/set_words.h"

#include <doctest/doctest.h>

#include "stage/blocking.h"
#include "stage/prop_mesh.h"
#include "stage/set_pieces.h"
#include "stage/shipped_presets.h"

namespace tw {
namespace {

Beat beatOf(const std::string& setting, const std::string& description) {
  Beat beat;
  beat.setting = setting;
  beat.description = description;
  beat.figures = {{"ada", "stand", "", ""}};
  return beat;
}

Beat throughWindow() {
  Beat beat = beatOf("underwater", "Ada swims through the arch of a window. She looks back.");
  beat.figures[0] = {"ada", "swim", "swims to", "arch"};
  beat.props = {{"arch", "arch of a window", "arch", {2.4, 3, 0.5}}};
  return beat;
}

Scene sceneFor(const Beat& beat, double sideDeg, bool mirrored = false) {
  Cast cast;
  cast.bodies["ada"] = bodyOf({"ada", "ADA"});
  StageRequest request;
  request.beat = &beat;
  StagingChoice choice;
  choice.sideDeg = sideDeg;
  choice.mirrored = mirrored;
  return blocked(request, choice, cast, shippedPoses());
}

double highestOf(const std::vector<Solid>& solids) {
  double high = 0;
  for (const Solid& solid : solids)
    for (const Vec3& p : solid.mesh.points) high = std::max(high, p.y());
  return high;
}

}  // namespace

TEST_CASE("a tower is near when somebody moves along it and far when it is looked at") {
  CHECK(towerIn(beatOf("underwater", "She swims past the bell tower."))->near);
  CHECK_FALSE(towerIn(beatOf("exterior, boat", "He looks at the tower."))->near);
  CHECK_FALSE(towerIn(beatOf("exterior, boat", "Far off, against the sky, a tower."))->near);
  CHECK_FALSE(towerIn(beatOf("exterior, field", "She waits.")));
  CHECK_FALSE(towerIn(beatOf("interior, tower", "She waits.")));
}

TEST_CASE("on the water only the broken top of a tower shows and in a square it is whole") {
  const auto sunk = towerIn(beatOf("exterior, lake", "The tip of a tower stands out of it."));
  CHECK((sunk->sunk && sunk->broken));
  const auto whole = towerIn(beatOf("exterior, square, church", "They meet."));
  CHECK_FALSE((whole->sunk || whole->broken));
  CHECK(towerIn(beatOf("exterior, square", "A ruined church tower."))->broken);
}

TEST_CASE("the tower that is swum past rises above and sinks below the swimmer") {
  Beat beat = beatOf("underwater", "Ada swims past the drowned bell tower.");
  beat.figures[0].pose = "swim";
  const Scene scene = sceneFor(beat, 0);
  const double swimmer = scene.actors[0].skeleton[Joint::Pelvis].y();
  CHECK(swimmer > 5);
  CHECK(highestOf(setSolids(beat, {}, false, 1)) > swimmer + 3);
}

TEST_CASE("set pieces are the same picture in a looking-glass") {
  const Beat beat = beatOf("underwater", "Ada swims past the drowned bell tower.");
  CameraPlace camera;
  camera.eye = {2, 3, -9};
  camera.panDeg = 12;
  CameraPlace glass = camera;
  glass.eye.x = -2;
  glass.panDeg = -12;
  const auto one = setSolids(beat, camera, false, 1), other = setSolids(beat, glass, true, 1);
  REQUIRE(one.size() == other.size());
  for (std::size_t i = 0; i < one.size(); ++i) {
    REQUIRE(one[i].mesh.points.size() == other[i].mesh.points.size());
    CHECK(one[i].garmentLines.size() == other[i].garmentLines.size());
    for (std::size_t k = 0; k < one[i].mesh.points.size(); ++k) {
      const Vec3 p = one[i].mesh.points[k], q = other[i].mesh.points[k];
      CHECK((Vec3(-p.x(), p.y(), p.z()) - q).norm() < 1e-9);
    }
  }
}

TEST_CASE("who swims through an opening is inside it and nobody looks through it by passing") {
  const Beat beat = throughWindow();
  REQUIRE(passerOf(beat, 0) == std::size_t{0});
  for (const double side : {0.0, 40.0, -60.0}) {
    const Scene scene = sceneFor(beat, side);
    const Vec3 hips = scene.actors[0].skeleton[Joint::Pelvis];
    CHECK(std::hypot(scene.props[0].at.x - hips.x(), scene.props[0].at.z - hips.z()) < 0.35);
    const Opening o = passageOpening(beat, beat.props[0], scene.actors[0].floor);
    CHECK(hips.y() > o.sill);
    CHECK(hips.y() < o.sill + o.height);
    // Seen from the camera's side the wall is not edge on.
    CHECK(std::abs(std::remainder(scene.props[0].headingDeg - side, 360.0)) < 40);
  }
  Beat looks = throughWindow();
  looks.description = "Ada looks through the arch of a window.";
  CHECK_FALSE(passerOf(looks, 0));
}

TEST_CASE("doors and windows stand behind the figures and face them") {
  Beat beat = beatOf("interior, kitchen", "Ada stands. A door. A window.");
  beat.props = {{"door", "door", "door", {0.95, 2.05, 0.08}},
                {"window", "window", "window", {1, 1.2, 0.1}}};
  const Scene scene = sceneFor(beat, 0);
  for (const SetProp& prop : scene.props) CHECK(prop.at.z > 1.5);
  CHECK(scene.props[1].at.y > 0.8);
  beat.figures[0] = {"ada", "push", "opens", "door"};
  const Scene opens = sceneFor(beat, 0);
  const Vec3 to(-opens.props[0].at.x, 0, -opens.props[0].at.z);
  CHECK(std::abs(std::remainder(opens.props[0].headingDeg - headingOf(to), 360.0)) < 1);
  CHECK(to.norm() < 1.2);
}

}  // namespace tw
