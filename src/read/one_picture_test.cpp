#include "read/one_picture.h"

#include <doctest/doctest.h>

#include "read/drawn_picture_test.h"

namespace tw {

namespace {

/// A page of 160 × 240 mm with two by three panels.
struct Page {
  GreyPicture picture;
  OnePictureAsk ask;
};

Page pageOf(double pxPerMm = 3) {
  Page page{paper(static_cast<int>(160 * pxPerMm), static_cast<int>(240 * pxPerMm)), {}};
  page.picture.mmPerPx = 1 / pxPerMm;
  page.ask.page = {{0, 0}, {160, 240}};
  for (int row = 0; row < 3; ++row)
    for (int column = 0; column < 2; ++column) {
      const Point corner{column * 82.0, row * 81.0};
      const Rect box{corner, corner + Vector{78, 77}};
      paintBox(page.picture, box, 0.8f);
      page.ask.panels.push_back(polygonOf(box));
      page.ask.focuses.push_back(box.centre());
    }
  return page;
}

void putFigure(Page& page, int panel, float light, double size = 24) {
  const Point at = page.ask.focuses[panel];
  paintEllipse(page.picture, {at - Vector{size / 2, size / 2}, at + Vector{size / 2, size / 2}},
               light);
}

}  // namespace

TEST_CASE("the panel with the darkest figure is the strongest and the page has one centre") {
  Page page = pageOf();
  putFigure(page, 0, 0.6f);
  putFigure(page, 3, 0.0f, 34);
  page.ask.dominant = 3;
  const OnePicture picture = onePictureOf(page.picture, page.ask);
  CHECK(picture.strongest == 3);
  CHECK(picture.dominantHolds > 0.6);
  REQUIRE(picture.centres.size() == 1);
  CHECK((picture.centres[0].at - page.ask.focuses[3]).length() < 6);
}

TEST_CASE("two equal figures far apart compete") {
  Page page = pageOf();
  putFigure(page, 0, 0, 34);
  putFigure(page, 5, 0, 34);
  const OnePicture picture = onePictureOf(page.picture, page.ask);
  CHECK(picture.centres.size() == 2);
}

TEST_CASE("dark panels on white paper have their centre in a figure and not at their corners") {
  Page page = pageOf();
  for (const Polygon& panel : page.ask.panels) paintBox(page.picture, bounds(panel), 0.1f);
  putFigure(page, 4, 0.9f, 30);
  const OnePicture picture = onePictureOf(page.picture, page.ask);
  REQUIRE(picture.centres.size() == 1);
  CHECK((picture.centres[0].at - page.ask.focuses[4]).length() < 6);
  CHECK(picture.strongest == 4);
}

TEST_CASE("black is counted per panel and per quarter and weighs to its side") {
  Page page = pageOf();
  paintBox(page.picture, {{82, 0}, {160, 77}}, 0);
  const OnePicture picture = onePictureOf(page.picture, page.ask);
  CHECK(picture.panels[1].black > 0.97);
  CHECK(picture.panels[0].black == 0);
  CHECK(picture.panels[1].light < 0.05);
  CHECK(picture.black[1] == doctest::Approx(78 * 77 / (80.0 * 120)).epsilon(0.05));
  CHECK(picture.black[2] == 0);
  CHECK(picture.balance.x > 0.1);
  CHECK(picture.balance.y < -0.1);
}

TEST_CASE("strong focuses in one glance across a gutter fight and weak or distant ones do not") {
  Page page = pageOf();
  page.ask.focuses[0] = {70, 40};
  page.ask.focuses[1] = {89, 40};
  putFigure(page, 0, 0, 9);
  putFigure(page, 1, 0, 9);
  const auto fights = onePictureOf(page.picture, page.ask).fights;
  REQUIRE(fights.size() == 1);
  CHECK(fights[0].a == 0);
  CHECK(fights[0].b == 1);
  CHECK(fights[0].apartMm == doctest::Approx(19));
  Page calm = pageOf();
  calm.ask.focuses[0] = {70, 40};
  calm.ask.focuses[1] = {89, 40};
  putFigure(calm, 0, 0, 9);
  putFigure(calm, 4, 0, 30);
  CHECK(onePictureOf(calm.picture, calm.ask).fights.empty());
}

TEST_CASE("an inset's darkness is its own and not its ground panel's") {
  Page page = pageOf();
  const Rect inset{{10, 10}, {50, 50}};
  page.ask.panels.push_back(polygonOf(inset));
  page.ask.focuses.push_back(inset.centre());
  page.ask.layer = {0, 0, 0, 0, 0, 0, 1};
  paintBox(page.picture, inset, 0);
  const OnePicture picture = onePictureOf(page.picture, page.ask);
  CHECK(picture.panels[6].black > 0.85);
  CHECK(picture.panels[0].black < 0.05);
}

TEST_CASE("the page's answer hardly depends on the scan's resolution and mirrors with the page") {
  Page first = pageOf(2), second = pageOf(6);
  for (Page* page : {&first, &second}) putFigure(*page, 2, 0.1f, 30);
  const OnePicture a = onePictureOf(first.picture, first.ask);
  const OnePicture b = onePictureOf(second.picture, second.ask);
  CHECK(a.strongest == b.strongest);
  for (std::size_t i = 0; i < 6; ++i)
    CHECK(a.panels[i].strength == doctest::Approx(b.panels[i].strength).epsilon(0.05).scale(0.2));
  CHECK(a.balance.x == doctest::Approx(b.balance.x).epsilon(0.05));
  first.picture = mirroredPicture(first.picture);
  CHECK(onePictureOf(first.picture, first.ask).balance.x ==
        doctest::Approx(-a.balance.x).epsilon(0.01));
}

TEST_CASE("a page without panels or picture is answered all the same") {
  CHECK(onePictureOf(GreyPicture{}, {}).panels.empty());
  CHECK(onePictureOf(paper(50, 80), {.page = {{0, 0}, {50, 80}}}).strongest == -1);
  CHECK(onePictureOf(paper(50, 80), {.page = {{0, 0}, {50, 80}}}).centres.empty());
}

}  // namespace tw
