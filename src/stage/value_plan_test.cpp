#include "stage/value_plan.h"

#include <doctest/doctest.h>

#include <cmath>
#include <numeric>

#include "geometry/polygon.h"
#include "stage/solid_shapes.h"
#include "stage/value_blacks.h"

using namespace tw;

namespace {

const Rect kFrame{{0, 0}, {100, 80}};

Camera camera(double side = 0) {
  CameraPlace place;
  place.eye = {side, 1.4, -4};
  return Camera(place, 100.0 / 80);
}

Solid ball(double x, double size, bool focus) {
  Solid solid{.mesh = placed(ellipsoidMesh({size, size, size}, 48), {x, 1.4, 0}, 0, 0, true)};
  solid.prop = 0;
  solid.isFocus = focus;
  return solid;
}

ValuePlan planOf(const std::vector<Solid>& solids, const Lighting& light,
                 const std::string& setting = "exterior field") {
  DrawOptions options;
  options.width = 400;
  options.setting = setting;
  return drawWithValues(solids, camera(), kFrame, polygonOf(kFrame), options, light).plan;
}

/// Cells with no picture behind them.
Cells plainCells(int width, int height) {
  Cells cells;
  cells.width = width;
  cells.height = height;
  const auto n = static_cast<std::size_t>(width) * static_cast<std::size_t>(height);
  cells.who.assign(n, Cells::kSky);
  cells.local.assign(n, 1);
  cells.lit.assign(n, 1);
  cells.step.assign(n, 0);
  return cells;
}

}  // namespace

TEST_CASE("the shares of the four values make up the panel, each region lies in the one before") {
  const ValuePlan plan = planOf({ball(-0.5, 1.2, true), ball(0.8, 0.9, false)}, {});
  CHECK(std::accumulate(plan.shares.begin(), plan.shares.end(), 0.0) == doctest::Approx(1));
  CHECK(plan.shares[1] + plan.shares[2] + plan.shares[3] > 0.05);
  for (std::size_t i = 1; i < plan.regions.size(); ++i)
    CHECK(area(without(plan.regions[i], plan.regions[i - 1])) < 0.02 * kFrame.area());
}

TEST_CASE("traced regions have the area that the shares tell") {
  const ValuePlan plan = planOf({ball(0, 1.6, true)}, {});
  double atLeast = 0;
  for (std::size_t step = 3; step > 0; --step) {
    atLeast += plan.shares[step];
    const Region inside = common(plan.regions[step - 1], {polygonOf(kFrame)});
    CHECK(std::abs(area(inside) / kFrame.area() - atLeast) < 0.01);
  }
}

TEST_CASE("a mirrored scene has the mirrored plan") {
  Lighting light;
  const std::vector<Solid> scene{ball(-0.55, 1.2, true), ball(0.8, 0.7, false)};
  const std::vector<Solid> other{ball(0.55, 1.2, true), ball(-0.8, 0.7, false)};
  const ValuePlan a = planOf(scene, light), b = planOf(other, mirrored(light));
  for (std::size_t i = 0; i < kValueSteps; ++i) CHECK(std::abs(a.shares[i] - b.shares[i]) < 0.003);
  CHECK(std::abs(a.contrast() - b.contrast()) < 1);
  CHECK(std::abs(a.apart - b.apart) < 0.02);
  for (std::size_t i = 0; i < a.regions.size(); ++i) {
    Region turned;
    for (const Polygon& p : b.regions[i]) turned.push_back(mirrored(p, kFrame.centre().x));
    const double differs =
        area(without(a.regions[i], turned)) + area(without(turned, a.regions[i]));
    CHECK(differs < 0.01 * kFrame.area());
  }
}

TEST_CASE("the same scene gives the same plan") {
  const std::vector<Solid> scene{ball(-0.5, 1.2, true), ball(0.8, 0.9, false)};
  const ValuePlan a = planOf(scene, {}), b = planOf(scene, {});
  CHECK(a.regions == b.regions);
  CHECK(a.shares == b.shares);
}

TEST_CASE("a speck takes the value around it, a shape of some size stays") {
  Cells cells = plainCells(40, 30);
  const auto at = [&](int x, int y) -> std::uint8_t& {
    return cells.step[static_cast<std::size_t>(y) * 40 + static_cast<std::size_t>(x)];
  };
  at(5, 5) = 3;
  for (int y = 10; y < 20; ++y)
    for (int x = 10; x < 20; ++x) at(x, y) = 2;
  at(14, 14) = at(15, 14) = 1;
  cleanSpecks(cells, 8);  // mm², a cell is 1 mm wide
  CHECK(at(5, 5) == 0);
  CHECK(at(14, 14) == 2);
  CHECK(at(12, 12) == 2);
}

TEST_CASE(
    "a focus of its ground's value does not stand clear, a ground of another value frees it") {
  Solid focus = ball(0, 1, true);
  Cells cells = plainCells(40, 30);
  for (int y = 10; y < 20; ++y)
    for (int x = 10; x < 20; ++x)
      cells.who[static_cast<std::size_t>(y) * 40 + static_cast<std::size_t>(x)] = 0;
  const FocusBorder border(cells, {focus});
  CHECK(border.standing(cells, {}).apart == 0);
  chooseGrounds(cells, {focus});
  const Standing after = border.standing(cells, {});
  CHECK(after.apart == 1);
  CHECK(after.focusLightness - after.groundLightness == doctest::Approx(100.0 / 3));
}

TEST_CASE("light from behind leaves a dark figure with a lit edge") {
  const auto lights = LightWords::load();
  REQUIRE(lights.has_value());
  const std::vector<Solid> scene{ball(0, 1.6, true)};
  const ValuePlan front = planOf(scene, {}), back = planOf(scene, *lights->find("back"));
  CHECK(back.focusLightness < front.focusLightness - 15);
}
