#include "read/contrast_map.h"

#include <doctest/doctest.h>

#include "read/drawn_picture_test.h"

namespace tw {

TEST_CASE("contrast at a disc's middle equals the difference of two Gaussians over it") {
  // The mean of a disc of radius r under a Gaussian of sigma s, at its middle, is 1 − exp(−r²/2s²):
  // the Rayleigh distribution's own closed form.
  GreyPicture picture = paper(241, 241);
  const double r = 20, centre = 6, surround = 24;
  paint(picture, 0, [&](Point p) { return (p - Point{120.5, 120.5}).length() <= r; });
  const PlaceMap map = contrastMap(picture, centre, surround);
  const auto share = [&](double s) { return 1 - std::exp(-r * r / (2 * s * s)); };
  CHECK(-map.at(120, 120) == doctest::Approx(share(centre) - share(surround)).epsilon(0.01));
}

TEST_CASE("an even picture has no contrast up to its rim") {
  for (const double v : contrastMap(paper(60, 40, 0.3f), 3, 12).value) CHECK(std::abs(v) < 1e-6);
}

TEST_CASE("peaks come strongest first and stand apart") {
  GreyPicture picture = paper(200, 100);
  paintBox(picture, {{30, 40}, {42, 52}}, 0);
  paintBox(picture, {{140, 40}, {152, 52}}, 0.5f);
  const auto peaks = peaksOf(contrastMap(picture, 3, 12), 0.3, 30, 100);
  REQUIRE(peaks.size() == 2);
  CHECK_FALSE(peaks[0].lighter);
  CHECK((peaks[0].at - Point{36, 46}).length() < 3);
  CHECK((peaks[1].at - Point{146, 46}).length() < 3);
  CHECK(peaks[1].strength == doctest::Approx(peaks[0].strength / 2).epsilon(0.05));
  CHECK(peaksOf(contrastMap(paper(30, 30), 3, 12), 0.5, 5).empty());
}

}  // namespace tw
