#include "stage/shot_size.h"

#include <doctest/doctest.h>

namespace tw {

TEST_CASE("ratios with eight per cent head room equal the table of cut lines") {
  // Staging facts §7.2, column "ratio, 8 % headroom": stature/frame = (1 − 0.08)/(1 − c), with c
  // from Drillis & Contini 1966. Checked here through the shots whose usual cut is near a row.
  CHECK(ratioFor(ShotSize::Medium, 0.08) == doctest::Approx(0.92 / (1 - 0.585)));
  CHECK(ratioFor(ShotSize::MediumLong, 0.08) == doctest::Approx(0.92 / (1 - 0.37)));
  CHECK(ratioFor(ShotSize::CloseUp, 0.08) == doctest::Approx(0.92 / (1 - 0.80)));
}

TEST_CASE("shot names follow the thresholds between landmarks") {
  // Staging facts §7.2, "typical name" of the ratio with 8 % head room.
  CHECK(shotOfRatio(8.5) == ShotSize::ExtremeCloseUp);
  CHECK(shotOfRatio(7.08) == ShotSize::CloseUp);
  CHECK(shotOfRatio(5.05) == ShotSize::CloseUp);
  CHECK(shotOfRatio(3.29) == ShotSize::MediumCloseUp);
  CHECK(shotOfRatio(2.49) == ShotSize::Medium);
  CHECK(shotOfRatio(1.96) == ShotSize::Medium);
  CHECK(shotOfRatio(1.29) == ShotSize::MediumLong);
  CHECK(shotOfRatio(0.92) == ShotSize::Long);
  CHECK(shotOfRatio(1.0 / 3) == ShotSize::VeryLong);
  CHECK(shotOfRatio(0.1) == ShotSize::ExtremeLong);
}

TEST_CASE("no shot's usual cut lies on a joint, whatever the head room inside the band") {
  for (int i = 0; i < kShotSizes; ++i) {
    const auto shot = static_cast<ShotSize>(i);
    if (usualCut(shot) > 0) CHECK(!cutsAtJoint(usualCut(shot)));
    for (const double room : {0.05, 0.1, 0.2, 0.35}) {
      CHECK(shotOfRatio(ratioFor(shot, room)) == shot);
    }
  }
}

TEST_CASE("cut lines are named by the nearest landmark") {
  CHECK(cutName(0.30) == "knee");
  CHECK(cutName(0.60) == "waist");
  CHECK(cutName(-0.1) == "whole");
  CHECK(cutsAtJoint(0.285));
  CHECK(!cutsAtJoint(0.37));
}

}  // namespace tw
