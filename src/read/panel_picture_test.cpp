#include "read/panel_picture.h"

#include <doctest/doctest.h>

#include "read/drawn_picture_test.h"

namespace tw {

TEST_CASE("a panel is cut out of its page at its place and scale") {
  GreyPicture page = paper(600, 800, 0.5f);
  page.mmPerPx = 0.25;
  page.origin = {-3, -3};
  paintBox(page, {{40, 60}, {50, 70}}, 0);
  const PanelPicture panel = panelPictureOf(page, polygonOf(Rect{{20, 30}, {120, 130}}));
  CHECK(panel.picture.width == 256);
  CHECK(panel.picture.height == 256);
  CHECK(panel.picture.origin.x == doctest::Approx(20).epsilon(0.02));
  double darkest = 1;
  Point at;
  for (int y = 0; y < 256; ++y)
    for (int x = 0; x < 256; ++x)
      if (panel.picture.at(x, y) < darkest) {
        darkest = panel.picture.at(x, y);
        at = panel.picture.onPage(x, y);
      }
  CHECK(darkest < 0.01);
  CHECK(at.x == doctest::Approx(40).epsilon(0.02));
  CHECK(at.y == doctest::Approx(60).epsilon(0.02));
}

TEST_CASE("what lies outside a slanted panel neither shows nor counts") {
  GreyPicture page = paper(200, 200, 0.6f);
  paintBox(page, {{0, 0}, {60, 60}}, 0);
  const Polygon slanted{{{100, 0}, {200, 0}, {200, 200}, {0, 200}}};
  const PanelPicture panel = panelPictureOf(page, slanted);
  CHECK(panel.insidePixels > 0.6 * 200 * 200);
  CHECK(panel.insidePixels < 0.75 * 200 * 200);
  for (const float light : panel.picture.light) CHECK(light > 0.5f);
}

TEST_CASE("masked places take the light of the nearest place inside") {
  GreyPicture picture = paper(10, 2, 0);
  picture.light[3] = 0.25f;
  picture.light[4] = 0.75f;
  std::vector<std::uint8_t> inside(20, 0);
  inside[3] = inside[4] = 255;
  continueOutward(picture, inside);
  CHECK(picture.at(0, 0) == 0.25f);
  CHECK(picture.at(9, 0) == 0.75f);
  CHECK(picture.at(3, 1) == 0.25f);
  continueOutward(picture, std::vector<std::uint8_t>(20, 0));
  CHECK(picture.at(4, 0) == 0.75f);
}

TEST_CASE("a panel beside the picture is empty and so is one without corners") {
  const GreyPicture page = paper(50, 50);
  CHECK(panelPictureOf(page, polygonOf(Rect{{60, 0}, {90, 40}})).empty());
  CHECK(panelPictureOf(page, Polygon{}).empty());
  CHECK(panelPictureOf(GreyPicture{}, polygonOf(Rect{{0, 0}, {9, 9}})).empty());
}

TEST_CASE("a panel that runs off the picture is seen as far as the picture goes") {
  const PanelPicture panel = panelPictureOf(paper(50, 50), polygonOf(Rect{{-20, 10}, {90, 40}}));
  CHECK(panel.picture.width == 50);
  CHECK(panel.picture.height == 30);
}

}  // namespace tw
