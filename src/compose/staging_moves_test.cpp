#include "compose/staging_moves.h"

#include <doctest/doctest.h>

#include "compose/small_page.h"

namespace tw {
namespace {

/// The page with a joint, a gaze and the camera of panel 2 set by hand.
MeasuredPage handled(const SmallPage& page) {
  MeasuredPage out = page.measured();
  Staging staging = out.rough().panels[1].staging;
  staging.figures[0].turnsDeg["left elbow"] = {40, 0, 0};
  staging.figures[0].gazeDeg += 12;
  staging.camera.eye.x += 0.2;
  staging.camera.rollDeg += 3;
  out.restage(1, staging);
  return out;
}

TEST_CASE("a rough from the search is not staged by hand and one whose camera moved is") {
  const SmallPage page;
  const MeasuredPage fresh = page.measured();
  for (std::size_t panel = 0; panel < 3; ++panel) CHECK_FALSE(isStagedByHand(fresh, panel));
  CHECK(isStagedByHand(handled(page), 1));
}

TEST_CASE("the looking-glass turns every head to the other side and twice is as before") {
  const SmallPage page;
  const MeasuredPage measured = handled(page);
  const Staging& staging = measured.rough().panels[1].staging;
  const Staging glass = inLookingGlass(staging);
  const Variant plain = measured.quickly(1, staging), other = measured.quickly(1, glass);
  REQUIRE(plain.heads.size() == other.heads.size());
  for (std::size_t i = 0; i < plain.heads.size(); ++i) {
    CHECK(other.heads[i].centre().x == doctest::Approx(1 - plain.heads[i].centre().x));
    CHECK(other.heads[i].centre().y == doctest::Approx(plain.heads[i].centre().y));
  }
  CHECK(other.lead.x == doctest::Approx(-plain.lead.x));
  CHECK(inLookingGlass(glass) == staging);
}

TEST_CASE("mirroring keeps the joints and the camera that a hand set") {
  const SmallPage page;
  const MeasuredPage measured = handled(page);
  const Staging& staging = measured.rough().panels[1].staging;
  const Staging mirrored = mirroredPicture(measured, 1);
  CHECK(mirrored == inLookingGlass(staging));
}

TEST_CASE("another choice keeps joints and gaze") {
  const SmallPage page;
  const MeasuredPage measured = handled(page);
  const Staging& staging = measured.rough().panels[1].staging;
  StagingChoice choice = staging.choice;
  choice.eye = choice.eye == EyeHeight::Low ? EyeHeight::High : EyeHeight::Low;
  const Staging next = stagedAs(measured, 1, choice);
  CHECK(next.figures[0].turnsDeg == staging.figures[0].turnsDeg);
  CHECK(next.figures[0].gazeDeg == staging.figures[0].gazeDeg);
  CHECK(next.choice == choice);
}

TEST_CASE("a tilt is added up and ends at the most that is meant") {
  const SmallPage page;
  MeasuredPage measured = page.measured();
  const double start = measured.rough().panels[0].staging.choice.tiltDeg;
  measured.restage(0, levelPicture(measured, 0));
  CHECK(measured.rough().panels[0].staging.choice.tiltDeg == 0);
  CAPTURE(start);
  int steps = 0;
  while (const auto tilted = tiltedPicture(measured, 0, 7)) {
    REQUIRE(++steps < 10);
    measured.restage(0, *tilted);
  }
  CHECK(steps == 3);
  CHECK(std::abs(measured.rough().panels[0].staging.camera.rollDeg) == doctest::Approx(21));
}

TEST_CASE("tilting by hand rolls the camera and moves it nowhere") {
  const SmallPage page;
  const MeasuredPage measured = handled(page);
  const Staging& before = measured.rough().panels[1].staging;
  const auto tilted = tiltedPicture(measured, 1, -7);
  REQUIRE(tilted);
  CHECK(tilted->camera.eye == before.camera.eye);
  CHECK(std::abs(tilted->camera.rollDeg - before.camera.rollDeg) == doctest::Approx(7));
  CHECK(tilted->figures == before.figures);
}

}  // namespace
}  // namespace tw
