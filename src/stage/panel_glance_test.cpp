#include "stage/panel_glance.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <functional>

#include "geometry/polygon.h"

namespace tw {

namespace {

Beat alone() {
  Beat beat;
  beat.id = "p1-1";
  beat.setting = "exterior";
  beat.figures = {{"ada", "stand", "", ""}};
  return beat;
}

PanelGlance glanceOf(const Polygon& outline, int width, const std::function<void(Staging&)>& change,
                     const Beat& beat) {
  const auto stager = Stager::make(std::vector<Character>{});
  const auto lights = LightWords::load();
  REQUIRE(stager);
  REQUIRE(lights);
  const std::vector<Character> nobody;
  StageRequest request;
  request.beat = &beat;
  request.cast = &nobody;
  RoughPanel panel;
  panel.outline = outline;
  panel.staging = stager->solved(request, {});
  change(panel.staging);
  return glanceAt(*stager, panel, beat, *lights, width);
}

GreyPicture greyAt(const Polygon& outline, int width) {
  return glanceOf(
             outline, width, [](Staging&) {}, alone())
      .grey;
}

/// What is seen of a barrel after the change.
SeenThing barrelAfter(const std::function<void(Staging&)>& change) {
  Beat beat = alone();
  Prop barrel;
  barrel.id = barrel.name = "barrel";
  barrel.shape = "cylinder";
  barrel.sizeM = {0.6, 0.9, 0.6};
  beat.props = {barrel};
  const auto things = glanceOf(polygonOf({{20, 30}, {80, 70}}), 120, change, beat).things;
  REQUIRE(things.size() == 1);
  CHECK(things[0].prop == "barrel");
  return things[0];
}

}  // namespace

TEST_CASE("the picture spans the panel's box, in light from black to paper") {
  const GreyPicture grey = greyAt(polygonOf({{20, 30}, {80, 70}}), 120);
  CHECK(grey.width == 120);
  CHECK(grey.height == 80);
  CHECK(grey.mmPerPx == doctest::Approx(0.5));
  CHECK(grey.onPage(0, 0).x == doctest::Approx(20.25));
  const auto [least, most] = std::ranges::minmax(grey.light);
  CHECK(least >= 0);
  CHECK(most <= 1);
  CHECK(most - least > 0.1f);  // there is a figure before a ground
}

TEST_CASE("what lies outside a slanted panel is paper") {
  const GreyPicture grey = greyAt({{{20, 30}, {80, 30}, {60, 70}, {20, 70}}}, 120);
  CHECK(grey.at(grey.width - 1, grey.height - 1) == 1.0f);
}

TEST_CASE("a thing before the camera is seen and one behind it or beside the frame is not") {
  const SeenThing before = barrelAfter([](Staging& s) {
    s.props[0].at = {s.figures[0].at.x + 0.2, 0.8, s.figures[0].at.z};  // in a medium shot
  });
  CHECK(before.visible > 0.5);
  CHECK(before.share > 0.002);
  CHECK_FALSE(before.isTooFine);
  for (const double aside : {-40.0, 40.0}) {
    const SeenThing gone = barrelAfter([&](Staging& s) { s.props[0].at.x += aside; });
    CHECK(gone.visible == doctest::Approx(0));
  }
  const SeenThing behind = barrelAfter([](Staging& s) {
    s.props[0].at = {2 * s.camera.eye.x - s.figures[0].at.x, 0,
                     2 * s.camera.eye.z - s.figures[0].at.z};
  });
  CHECK(behind.visible == doctest::Approx(0));
  CHECK_FALSE(behind.isTooFine);
}

TEST_CASE("a thing too far away to fill some pixels is not judged") {
  const SeenThing far = barrelAfter([](Staging& s) {
    const Place3 eye = s.camera.eye, at = s.figures[0].at;
    s.props[0].at = {eye.x + 60 * (at.x - eye.x), 0, eye.z + 60 * (at.z - eye.z)};
  });
  CHECK(far.isTooFine);
}

}  // namespace tw
