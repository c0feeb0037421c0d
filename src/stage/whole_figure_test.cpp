#include "stage/whole_figure.h"

#include <doctest/doctest.h>

#include "geometry/polygon.h"

namespace tw {

namespace {

struct Hauling {
  Beat beat;
  RoughPanel panel;
  Stager stager;
  WholeFigure in(const Lighting& light) const {
    return wholeFigure(stager, panel, beat, stager.bodyOf("ada"), 0, light);
  }
};

Hauling hauling() {
  auto stager = Stager::make({{"ada", "ADA", {}, Sex::Female, 1.68, "medium", ""}});
  REQUIRE(stager.has_value());
  Beat beat;
  beat.setting = "exterior quay";
  beat.figures = {{"ada", "pull", "pulls", "chain"}};
  beat.props = {{"chain", "chain", "cylinder", {0.08, 3, 0.08}, ""}};
  StageRequest request;
  request.beat = &beat;
  request.aspect = 1.2;
  RoughPanel panel;
  panel.outline = polygonOf(Rect{{0, 0}, {96, 80}});
  panel.staging = stager->solved(request, {ShotSize::Long, EyeHeight::Level, 25, 0, false, 0});
  return {beat, panel, std::move(*stager)};
}

double darkMm2(const Drawing& drawing) {
  double sum = 0;
  for (const Tone& tone : drawing.tones) sum += tone.darkness * area(tone.region);
  return sum;
}

}  // namespace

TEST_CASE("what a figure hauls is told apart from the figure, and both make up the whole") {
  const WholeFigure figure = hauling().in(Lighting{});
  REQUIRE(figure.carries == std::vector<std::string>{"chain"});
  REQUIRE_FALSE(figure.hauled.empty());
  const Region both = united([&] {
    std::vector<Polygon> all = figure.ownShapes;
    all.insert(all.end(), figure.hauled.begin(), figure.hauled.end());
    return all;
  }());
  const double whole = area(united(figure.shapes));
  CHECK(area(without(figure.shapes, both)) < 0.03 * whole);
  CHECK(area(without(both, figure.shapes)) < 0.03 * whole);
  // A chain of 3 m reaches far beyond who hauls it.
  CHECK(bounds(Region(figure.hauled)).width() > bounds(Region(figure.ownShapes)).width());
  CHECK(bounds(Region(figure.ownShapes)).contains(figure.head));
}

TEST_CASE("a whole figure is inked in the light it is given: lit from behind it is darker") {
  const Hauling scene = hauling();
  const auto lights = LightWords::load();
  REQUIRE(lights.has_value());
  const double front = darkMm2(scene.in(Lighting{}).drawing);
  CHECK(darkMm2(scene.in(lights->lightFor("in silhouette")).drawing) > 1.2 * front);
}

}  // namespace tw
