#include "read/text_areas.h"

#include <doctest/doctest.h>

#include "read/drawn_picture_test.h"

namespace tw {

namespace {

std::vector<TextArea> areasOf(const GreyPicture& picture) {
  return textAreas(panelPictureOf(picture, wholeOf(picture)));
}

/// Brush strokes: nothing is quite flat.
void painted(GreyPicture& picture) {
  for (int y = 0; y < picture.height; ++y)
    for (int x = 0; x < picture.width; ++x)
      picture.light[y * picture.width + x] +=
          static_cast<float>(0.02 * std::sin(x * 0.9 + y * 0.5));
}

double shareCovered(const Rect& a, const Rect& b) {
  const double w = std::min(a.max.x, b.max.x) - std::max(a.min.x, b.min.x);
  const double h = std::min(a.max.y, b.max.y) - std::max(a.min.y, b.min.y);
  const double both = std::max(0.0, w) * std::max(0.0, h);
  return both / (a.area() + b.area() - both);
}

}  // namespace

TEST_CASE("a lettered balloon is found on tone and on paper and an empty one on tone") {
  for (const float ground : {0.3f, 0.6f, 1.0f})
    for (const bool lettered : {true, false}) {
      if (ground == 1 && !lettered) continue;
      CAPTURE(ground);
      CAPTURE(lettered);
      GreyPicture picture = paper(300, 240, ground);
      if (!lettered) painted(picture);
      const Rect balloon{{150, 30}, {270, 100}};
      paintBalloon(picture, balloon, lettered);
      const auto areas = areasOf(picture);
      REQUIRE_FALSE(areas.empty());
      CHECK(shareCovered(areas.front().box, balloon) > 0.8);
      CHECK(areas.front().sure > 0.5);
    }
}

TEST_CASE("letters make a balloon surer") {
  GreyPicture with = paper(300, 240, 0.5f), without = with;
  paintBalloon(with, {{150, 30}, {270, 100}}, true);
  painted(without);
  paintBalloon(without, {{150, 30}, {270, 100}}, false);
  const auto a = areasOf(with), b = areasOf(without);
  REQUIRE_FALSE(a.empty());
  REQUIRE_FALSE(b.empty());
  CHECK(a.front().marks >= 8);
  CHECK(a.front().sure > b.front().sure);
}

TEST_CASE("two balloons joined by a neck are two areas") {
  GreyPicture picture = paper(300, 240, 0.4f);
  painted(picture);
  paintBalloon(picture, {{120, 20}, {260, 90}}, false);
  paintBalloon(picture, {{120, 120}, {260, 190}}, false);
  paintBox(picture, {{186, 85}, {192, 125}}, 1);
  CHECK(areasOf(picture).size() == 2);
}

TEST_CASE("a bare white shape in flat line art is no text area") {
  GreyPicture picture = paper(300, 240, 0.8f);
  paintBalloon(picture, {{60, 60}, {120, 200}}, false);
  CHECK(areasOf(picture).empty());
}

TEST_CASE("a sky that grows lighter upward holds no text area") {
  GreyPicture picture = paper(300, 240);
  for (int y = 0; y < 240; ++y)
    for (int x = 0; x < 300; ++x)
      picture.light[y * 300 + x] = static_cast<float>(1 - 0.5 * y / 240);
  CHECK(areasOf(picture).empty());
}

TEST_CASE("the panel's own white ground is no text area") {
  GreyPicture picture = paper(300, 240);
  paintEllipse(picture, {{100, 60}, {180, 220}}, 0.2f);
  CHECK(areasOf(picture).empty());
}

TEST_CASE("a mirrored panel has mirrored areas") {
  GreyPicture picture = paper(300, 240, 0.5f);
  paintBalloon(picture, {{150, 30}, {270, 100}}, true);
  const auto a = areasOf(picture), b = areasOf(mirroredPicture(picture));
  REQUIRE(a.size() == b.size());
  for (std::size_t i = 0; i < a.size(); ++i) {
    CHECK(a[i].box.min.x == doctest::Approx(300 - b[i].box.max.x).epsilon(0.02));
    CHECK(a[i].sure == doctest::Approx(b[i].sure).epsilon(0.1));
  }
}

}  // namespace tw
