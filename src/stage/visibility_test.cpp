#include "stage/visibility.h"

#include <numeric>

#include "geometry/polygon.h"
#include "stage/solid_shapes.h"
#include "stage/staged_panel_test.h"

namespace tw {

namespace {

constexpr int kWide = 300;
const Polygon kPanel = polygonOf(Rect{{0, 0}, {120, 80}});

Camera standing() {
  CameraPlace place;
  place.eye = {0, 1.4, -4};
  return Camera(place, 1.5);
}

Solid box(const Vec3& base, const std::array<double, 3>& size, int prop) {
  Solid solid{.mesh = placed(boxMesh(size), {base.x(), base.y(), base.z()}, 0, 0, false)};
  solid.prop = prop;
  return solid;
}

/// A flat screen far off, and another half as far that hides its left half.
std::vector<Solid> screens() {
  return {box({0, 0.9, 4}, {2, 1, 0.01}, 0), box({-0.5, 0.9, 0}, {1, 1, 0.01}, 1)};
}

}  // namespace

TEST_CASE("a screen whose left half stands behind another is half seen and says what hides it") {
  const std::vector<Solid> solids = screens();
  const Camera camera = standing();
  const PanelSight sight(solids, camera, kPanel, kWide, Vec3::UnitY());
  const Visibility far = visibilityOf(sight, 0), near = visibilityOf(sight, 1);
  CHECK(far.visible == doctest::Approx(0.5).epsilon(0.02));
  CHECK(far.hiddenBy.at(1) == doctest::Approx(0.5).epsilon(0.02));
  CHECK(far.cutOff == doctest::Approx(0));
  CHECK(near.visible == doctest::Approx(1));
  CHECK(near.hiddenBy.empty());
  CHECK(plainShares(sight, 0).visible == doctest::Approx(far.visible));
  CHECK(plainShares(sight, 0).share == doctest::Approx(far.share));
}

TEST_CASE("what is seen, hidden and cut off make up the whole of a figure") {
  CHECK(rc::check("shares", [] {
    const Staging staging = anyStaging();
    const StagedPanel& panel = panelOfTwo();
    const std::vector<Solid> solids = panel.stager->solidsOf(staging, *panel.beat, 0.5);
    const Camera camera = panel.cameraOf(staging);
    const PanelSight sight(solids, camera, polygonOf(panel.frame), kWide, Vec3::UnitY());
    for (std::size_t i = 0; i < solids.size(); ++i) {
      if (solids[i].figure < 0) continue;
      const Visibility v = visibilityOf(sight, static_cast<int>(i));
      const double hidden =
          std::accumulate(v.hiddenBy.begin(), v.hiddenBy.end(), 0.0,
                          [](double sum, const auto& by) { return sum + by.second; });
      RC_LOG() << v.visible << " seen, " << hidden << " hidden, " << v.cutOff << " cut off";
      RC_ASSERT(std::abs(v.visible + hidden + v.cutOff - 1) < 0.03);
    }
  }));
}

}  // namespace tw
