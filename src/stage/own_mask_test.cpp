#include "stage/own_mask.h"

#include <bit>
#include <cmath>
#include <numbers>

#include "stage/solid_shapes.h"
#include "stage/staged_panel_test.h"

namespace tw {

namespace {

constexpr int kWide = 300;

Camera standing() {
  CameraPlace place;
  place.eye = {0, 1.4, -4};
  return Camera(place, 1.5);
}

Solid ballAt(const Vec3& middle, double radius) {
  Solid solid{.mesh = placed(ellipsoidMesh({2 * radius, 2 * radius, 2 * radius}, 48),
                             {middle.x(), middle.y(), middle.z()}, 0, 0, true)};
  solid.prop = 0;
  return solid;
}

std::vector<Solid> figures(const Staging& staging) {
  const StagedPanel& panel = panelOfTwo();
  std::vector<Solid> out;
  for (Solid& solid : panel.stager->solidsOf(staging, *panel.beat, 0.5))
    if (solid.figure >= 0) out.push_back(std::move(solid));
  return out;
}

}  // namespace

// A sphere of radius r at distance d is seen as a circle of radius f·r/√(d² − r²); elementary.
TEST_CASE("a ball covers the pixels of its circle") {
  const OwnMask mask(ballAt({0, 1.4, 0}, 0.5), standing(), kWide);
  const double radius = kWide * (50.0 / 36) * 0.5 / std::sqrt(16 - 0.25);
  CHECK(mask.pixels() == doctest::Approx(std::numbers::pi * radius * radius).epsilon(0.02));
  CHECK(mask.at(Point{0.5, 1 / 3.0}) == bitOf(Limb::Head));  // things are of bit 0
  CHECK(mask.at(Point{0.9, 1 / 3.0}) == 0);
}

TEST_CASE("a figure covers what its picture alone shows, and each pixel is some limb's") {
  const Staging staging = stagingOfTwo({ShotSize::Long, EyeHeight::Level, 15, 0, false, 0});
  const Camera camera = panelOfTwo().cameraOf(staging);
  for (const Solid& solid : figures(staging)) {
    const OwnMask mask(solid, camera, kWide);
    CHECK(mask.pixels() == doctest::Approx(pixelsAlone(solid, camera, kWide)));
    double covered = 0, limbs = 0, shared = 0;
    for (int y = 0; y < mask.height(); ++y)
      for (int x = 0; x < mask.width(); ++x) {
        covered += mask.at(x, y) != 0;
        shared += std::popcount(mask.at(x, y));
      }
    for (std::size_t k = 0; k < kLimbs; ++k) {
      const double own = mask.pixels(static_cast<Limb>(k));
      CHECK(own > 0);
      CHECK(own <= mask.pixels());
      limbs += own;
    }
    CHECK(mask.pixels() / limbs == doctest::Approx(covered / shared));
  }
}

TEST_CASE("what lies beyond the frame counts too and what lies behind the eye does not") {
  const OwnMask aside(ballAt({3, 1.4, 0}, 0.4), standing(), kWide);
  CHECK(aside.pixels() > 0);
  CHECK(aside.at(Point{0.5, 1 / 3.0}) == 0);
  CHECK(OwnMask(ballAt({0, 1.4, -9}, 0.4), standing(), kWide).pixels() == 0);
}

}  // namespace tw
