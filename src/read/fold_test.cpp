#include "read/fold.h"

#include <doctest/doctest.h>

#include "geometry/polygon.h"

namespace tw {
namespace {

RoughPanel panelWith(double faceX, double balloonX) {
  RoughPanel panel;
  SeenFigure figure;
  figure.who = "ada";
  figure.face = polygonOf(Rect{{faceX - 5, 10}, {faceX + 5, 24}});
  panel.figures = {figure};
  PlacedBalloon balloon;
  balloon.item = "c1";
  balloon.outline = polygonOf(Rect{{balloonX - 10, 40}, {balloonX + 10, 50}});
  panel.balloons = {balloon};
  return panel;
}

constexpr Rect kBand{{162, 0}, {178, 260}};

}  // namespace

TEST_CASE("a face in the fold is told with the share that lies there") {
  const auto lost = lostInFold({panelWith(162, 60)}, kBand);
  REQUIRE(lost.size() == 1);
  CHECK(lost[0].isFace);
  CHECK(lost[0].name == "ada");
  CHECK(lost[0].share == doctest::Approx(0.5));
}

TEST_CASE("copy in the fold is told apart from faces") {
  const auto lost = lostInFold({panelWith(60, 100), panelWith(60, 170)}, kBand);
  REQUIRE(lost.size() == 1);
  CHECK_FALSE(lost[0].isFace);
  CHECK(lost[0].panel == 1);
  CHECK(lost[0].share == doctest::Approx(16.0 / 20));
}

TEST_CASE("what only touches the band is not lost and a single page has no fold") {
  CHECK(lostInFold({panelWith(157, 152)}, kBand).empty());
  CHECK(lostInFold({panelWith(85, 85)}, {{85, 0}, {85, 260}}).empty());
}

}  // namespace tw
