#include "compose/re_aim.h"

#include <doctest/doctest.h>

#include <cmath>
#include <numbers>

#include "compose/small_page.h"
#include "compose/staging_moves.h"

namespace tw {
namespace {

double angleDeg(Vector a, Vector b) {
  return std::abs(std::atan2(cross(a, b), dot(a, b))) * 180 / std::numbers::pi;
}

TEST_CASE("a lead is turned to the other side and what is said of it is what is measured then") {
  const SmallPage page;
  for (std::size_t panel = 0; panel < 3; ++panel) {
    CAPTURE(panel);
    MeasuredPage measured = page.measured();
    const Vector wanted{-measured.rough().panels[panel].lead.direction.x, 0};
    if (wanted.length() < 0.1) continue;
    const auto aimed = reAimed(measured, panel, wanted);
    REQUIRE(aimed);
    CHECK(aimed->offDeg < 40);
    CHECK(aimed->change != "nothing");
    measured.restage(panel, aimed->staging);
    CHECK(angleDeg(measured.rough().panels[panel].lead.direction, wanted) ==
          doctest::Approx(aimed->offDeg).epsilon(0.01));
  }
}

TEST_CASE("a lead that is wanted as it is stays as it is") {
  const SmallPage page;
  const MeasuredPage measured = page.measured();
  const RoughPanel& panel = measured.rough().panels[0];
  const auto aimed = reAimed(measured, 0, panel.lead.direction);
  REQUIRE(aimed);
  CHECK(aimed->offDeg < 1);
  CHECK(aimed->change == "nothing");
  CHECK(aimed->staging == panel.staging);
}

TEST_CASE("aiming never leads farther off than before") {
  const SmallPage page;
  const MeasuredPage measured = page.measured();
  for (int deg = 0; deg < 360; deg += 45) {
    const double a = deg * std::numbers::pi / 180;
    const Vector wanted{std::cos(a), std::sin(a)};
    const auto aimed = reAimed(measured, 1, wanted);
    REQUIRE(aimed);
    CHECK(aimed->offDeg <= angleDeg(measured.rough().panels[1].lead.direction, wanted) + 1e-6);
  }
}

TEST_CASE("a target is aimed at from the focus") {
  const SmallPage page;
  const MeasuredPage measured = page.measured();
  const Point focus = measured.rough().panels[0].focus;
  const auto at = reAimedAt(measured, 0, focus + Vector{-30, 5});
  const auto along = reAimed(measured, 0, {-30, 5});
  REQUIRE(at);
  REQUIRE(along);
  CHECK(at->staging == along->staging);
}

TEST_CASE("nowhere is no aim") {
  const SmallPage page;
  CHECK_FALSE(reAimed(page.measured(), 0, {}));
}

}  // namespace
}  // namespace tw
