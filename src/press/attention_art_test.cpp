#include "press/attention_art.h"

#include <doctest/doctest.h>

#include "geometry/polygon.h"
#include "job/picture_size.h"

namespace tw {

namespace {

AttentionPicture example() {
  AttentionPicture picture{
      .title = "Where the eye goes: page 7",
      .sentences = {"Panel 1: focus proposed in the middle."},
      .page = {.width = 100, .height = 150, .light = std::vector<float>(15000, 1.f)},
      .pageBox = {{0, 0}, {100, 150}}};
  HeatPanel panel{.outline = polygonOf(Rect{{10, 10}, {90, 140}}),
                  .number = 1,
                  .width = 2,
                  .height = 2,
                  .heat = {0, 0, 0, 1},
                  .covers = {{10, 10}, {90, 140}},
                  .spots = {{50, 70}},
                  .focus = {{40, 60}, {60, 80}},
                  .leadFrom = {50, 70},
                  .lead = {1, 0}};
  picture.panels.push_back(panel);
  picture.centres = {{50, 70}};
  return picture;
}

}  // namespace

TEST_CASE("the attention picture is the page with room for its title and words") {
  const auto png = attentionPng(example());
  REQUIRE(png);
  const auto size = pictureSizeOf(*png, "a.png");
  REQUIRE(size);
  const double dotsPerMm = 130 / 25.4;
  CHECK(size->width == doctest::Approx(116 * dotsPerMm).epsilon(0.01));
  CHECK(size->height > 150 * dotsPerMm);
}

TEST_CASE("the same page gives the same bytes and more heat gives others") {
  AttentionPicture hotter = example();
  hotter.panels[0].heat = {1, 1, 1, 1};
  const auto a = attentionPng(example()), b = attentionPng(example()), c = attentionPng(hotter);
  REQUIRE(a);
  REQUIRE(b);
  REQUIRE(c);
  CHECK(*a == *b);
  CHECK(*a != *c);
}

TEST_CASE("a page without panels and without picture is drawn too") {
  AttentionPicture bare = example();
  bare.panels.clear();
  bare.page = {};
  CHECK(attentionPng(bare).has_value());
}

}  // namespace tw
