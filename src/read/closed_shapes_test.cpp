#include "read/closed_shapes.h"

#include <doctest/doctest.h>

#include "read/drawn_picture_test.h"

namespace tw {

namespace {

double meanIn(const PlaceMap& map, const Rect& box) {
  double sum = 0;
  int count = 0;
  for (int y = 0; y < map.height; ++y)
    for (int x = 0; x < map.width; ++x)
      if (box.contains(map.onPage(x, y))) sum += map.at(x, y), ++count;
  return sum / std::max(1, count);
}

}  // namespace

TEST_CASE("inside a closed outline draws more than inside the same outline left open") {
  GreyPicture closed = paper(200, 160);
  paintBox(closed, {{30, 30}, {90, 130}}, 0);
  paintBox(closed, {{34, 34}, {86, 126}}, 1);
  paintBox(closed, {{120, 30}, {180, 130}}, 0);
  paintBox(closed, {{124, 34}, {176, 126}}, 1);
  paintBox(closed, {{174, 40}, {182, 120}}, 1);  // the right one has a gap
  const PlaceMap map = closedShapes(panelPictureOf(closed, wholeOf(closed)));
  CHECK(meanIn(map, {{40, 40}, {80, 120}}) > meanIn(map, {{130, 40}, {170, 120}}) + 0.3);
}

TEST_CASE("a figure on its ground is closed and the ground is not, dark or light") {
  for (const float figure : {0.1f, 1.0f}) {
    GreyPicture picture = paper(200, 160, 0.55f);
    paintEllipse(picture, {{70, 40}, {120, 110}}, figure);
    const PlaceMap map = closedShapes(panelPictureOf(picture, wholeOf(picture)));
    CHECK(meanIn(map, {{80, 55}, {110, 95}}) > 0.8);
    CHECK(meanIn(map, {{0, 0}, {50, 160}}) < 0.1);
  }
}

TEST_CASE("a figure that the border cuts counts less than a whole one but counts") {
  GreyPicture picture = paper(200, 160);
  paintBox(picture, {{30, 60}, {70, 130}}, 0);
  paintBox(picture, {{130, 90}, {170, 160}}, 0);
  const PlaceMap map = closedShapes(panelPictureOf(picture, wholeOf(picture)));
  const double whole = meanIn(map, {{35, 70}, {65, 120}}),
               cut = meanIn(map, {{135, 100}, {165, 150}});
  CHECK(whole > cut);
  CHECK(cut > 0.1);
}

TEST_CASE("in a blank panel nothing is closed") {
  const GreyPicture picture = paper(120, 80, 0.7f);
  for (const double v : closedShapes(panelPictureOf(picture, wholeOf(picture))).value)
    CHECK(v == 0);
}

}  // namespace tw
