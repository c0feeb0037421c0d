#include "stage/panel_grey.h"

#include <doctest/doctest.h>

#include <algorithm>

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

GreyPicture greyAt(const Polygon& outline, int width) {
  const auto stager = Stager::make(std::vector<Character>{});
  const auto lights = LightWords::load();
  REQUIRE(stager);
  REQUIRE(lights);
  const Beat beat = alone();
  const std::vector<Character> nobody;
  StageRequest request;
  request.beat = &beat;
  request.cast = &nobody;
  RoughPanel panel;
  panel.outline = outline;
  panel.staging = stager->solved(request, {});
  return greyOf(*stager, panel, beat, *lights, width);
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

}  // namespace tw
