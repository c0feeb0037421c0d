// Trade custom, no source: what is tested is that the table keeps its own order.
#include "stage/camera_habits.h"

#include <doctest/doctest.h>

namespace tw {

TEST_CASE("the farther the shot the shorter the usual lens") {
  for (int shot = 1; shot < kShotSizes; ++shot)
    CHECK(usualLens(static_cast<ShotSize>(shot), EyeHeight::Level) <
          usualLens(static_cast<ShotSize>(shot - 1), EyeHeight::Level));
  CHECK(usualLens(ShotSize::Long, EyeHeight::Worm) < usualLens(ShotSize::Long, EyeHeight::Level));
}

TEST_CASE("eye heights rise from the worm's to the bird's, level looks straight") {
  for (const ShotSize shot : {ShotSize::Medium, ShotSize::VeryLong}) {
    CHECK(elevationDeg(EyeHeight::Level, shot) == 0);
    for (int eye = 1; eye <= static_cast<int>(EyeHeight::Bird); ++eye)
      CHECK(elevationDeg(static_cast<EyeHeight>(eye), shot) >
            elevationDeg(static_cast<EyeHeight>(eye - 1), shot));
  }
}

TEST_CASE("a still frame keeps its lens, a tall one lengthens and a wide one shortens it") {
  CHECK(lensStretch(1.5) == doctest::Approx(1));
  CHECK(lensStretch(0.75) == doctest::Approx(2));  // the frame's height alone decides
  CHECK(lensStretch(6) == doctest::Approx(0.5));   // the middle way: the root of a quarter
}

TEST_CASE("a shot that holds a level of the body holds every level above it") {
  for (int shot = 0; shot < kShotSizes; ++shot) {
    const auto size = static_cast<ShotSize>(shot);
    CHECK(holdsLevel(size, Level::Head));
    if (holdsLevel(size, Level::Foot)) CHECK(holdsLevel(size, Level::Hips));
    if (holdsLevel(size, Level::Hips)) CHECK(holdsLevel(size, Level::Torso));
    if (holdsLevel(size, Level::Torso)) CHECK(holdsLevel(size, Level::Shoulders));
    CHECK(holdsLevel(size, Level::Foot) == isWholeShot(size));
  }
}

}  // namespace tw
