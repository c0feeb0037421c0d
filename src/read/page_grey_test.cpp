#include "read/page_grey.h"

#include <doctest/doctest.h>

#include "geometry/polygon.h"

namespace tw {

namespace {

constexpr Rect kTrim{{0, 0}, {100, 150}};

GreyPicture flat(const Rect& box, float light) {
  GreyPicture out;
  out.width = 40;
  out.mmPerPx = box.width() / 40;
  out.height = static_cast<int>(box.height() / out.mmPerPx);
  out.origin = box.min;
  out.light.assign(static_cast<std::size_t>(out.width * out.height), light);
  return out;
}

RoughPanel panelAt(const Rect& box) {
  RoughPanel out;
  out.outline = polygonOf(box);
  return out;
}

float lightAt(const GreyPicture& page, Point mm) {
  return page.at(static_cast<int>(mm.x / page.mmPerPx), static_cast<int>(mm.y / page.mmPerPx));
}

}  // namespace

TEST_CASE("panels keep their values and gutters are paper") {
  const Rect a{{5, 5}, {95, 70}}, b{{5, 80}, {95, 145}};
  Rough rough;
  rough.panels = {panelAt(a), panelAt(b)};
  const GreyPicture page = pageGrey(rough, {flat(a, 0.3f), flat(b, 0.8f)}, kTrim, 100);
  CHECK(page.height == 150);
  CHECK(lightAt(page, {50, 40}) == doctest::Approx(0.3));
  CHECK(lightAt(page, {50, 110}) == doctest::Approx(0.8));
  CHECK(lightAt(page, {50, 75}) == 1.0f);
  CHECK(lightAt(page, {2, 2}) == 1.0f);
}

TEST_CASE("insets lie on their ground whatever their order") {
  const Rect inset{{20, 20}, {60, 60}};
  Rough rough;
  rough.panels = {panelAt(inset), panelAt(kTrim)};
  rough.panels[1].ground = true;
  const GreyPicture page = pageGrey(rough, {flat(inset, 0.9f), flat(kTrim, 0.2f)}, kTrim, 100);
  CHECK(lightAt(page, {40, 40}) == doctest::Approx(0.9));
  CHECK(lightAt(page, {80, 100}) == doctest::Approx(0.2));
}

TEST_CASE("a balloon is paper with type that is greyer than paper and lighter than ink") {
  const Rect box{{0, 0}, {100, 150}};
  Rough rough;
  rough.panels = {panelAt(box)};
  PlacedBalloon balloon;
  balloon.outline = ellipse({50, 50}, 20, 12, 40);
  balloon.sizePt = 8;
  balloon.lines = {{"HALLO THERE", {50, 51}}};
  rough.panels[0].balloons = {balloon};
  const GreyPicture page = pageGrey(rough, {flat(box, 0.1f)}, kTrim, 200);
  CHECK(lightAt(page, {50, 42}) == 1.0f);
  CHECK(lightAt(page, {50, 50}) < 1.0f);
  CHECK(lightAt(page, {50, 50}) > 0.8f);
  CHECK(lightAt(page, {20, 50}) == doctest::Approx(0.1));
}

}  // namespace tw
