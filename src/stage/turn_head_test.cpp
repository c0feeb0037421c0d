#include "stage/turn_head.h"

#include <doctest/doctest.h>

#include <cmath>

#include "stage/blocking.h"
#include "stage/shipped_presets.h"

namespace tw {
namespace {

const Body& someone() {
  static const Body body = bodyOf(Character{});
  return body;
}

TurnedHead turnedTo(const Pose& pose, const SetFigure& set, const Vec3& place) {
  return headTurnedTo(someone(), pose, set, place, shippedLimits());
}

}  // namespace

TEST_CASE("a head turns to the figure's left and nods to what lies low") {
  const Pose& stand = shippedPoses().orStand("stand");
  for (const bool mirrored : {false, true}) {
    SetFigure set;  // faces −z, its left is +x
    set.poseMirrored = mirrored;
    const Vec3 eyes = headMiddle(posed(someone(), stand, set));
    const TurnedHead left = turnedTo(stand, set, eyes + Vec3(1, 0, -1));
    CHECK(left.set.gazeDeg > 30);
    CHECK(left.offDeg < 0.1);
    const TurnedHead low = turnedTo(stand, set, eyes + Vec3(0, -0.5, -1));
    CHECK(low.pose.turnsDeg.at("head")[0] > 5);
    CHECK(low.offDeg < 0.1);
  }
}

TEST_CASE("what is behind is missed by what the neck lacks") {
  const Pose& stand = shippedPoses().orStand("stand");
  const Vec3 eyes = headMiddle(posed(someone(), stand, {}));
  const TurnedHead r = turnedTo(stand, {}, eyes + Vec3(0.3, 0, 2));
  const double most = shippedLimits().of("neck")[2].most;
  const double posedTwist = r.pose.turnsDeg.at("neck")[2] + r.pose.turnsDeg.at("head")[2];
  CHECK(r.set.gazeDeg + posedTwist == doctest::Approx(most));
  CHECK(r.offDeg > 180 - most - 20);
}

}  // namespace tw
