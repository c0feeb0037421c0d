#include "read/squint.h"

#include <doctest/doctest.h>
#include <rapidcheck.h>

#include "read/drawn_picture_test.h"

namespace tw {

namespace {

/// A panel of 200 × 100 mm drawn at so many pixels a millimetre.
GreyPicture panelOf(double pxPerMm, float ground) {
  GreyPicture picture =
      paper(static_cast<int>(200 * pxPerMm), static_cast<int>(100 * pxPerMm), ground);
  picture.mmPerPx = 1 / pxPerMm;
  return picture;
}

const Rect kFocus{{30, 30}, {50, 60}};
const Rect kRival{{150, 30}, {165, 50}};

Squint look(const GreyPicture& picture) {
  return squintAt(picture, wholeOf(picture), kFocus);
}

}  // namespace

TEST_CASE("the darkest thing on light ground is the strongest place") {
  GreyPicture picture = panelOf(4, 0.9f);
  paintBox(picture, kFocus, 0.1f);
  paintBox(picture, kRival, 0.6f);
  const Squint s = look(picture);
  CHECK(s.seen);
  CHECK(s.rank == 1);
  CHECK(s.holds > 0.6);
  CHECK(s.contrast == doctest::Approx(-0.8).epsilon(0.05));
  CHECK(kRival.outset(3).contains(s.elsewhereAt));
}

TEST_CASE("a pale focus beside something black has lost its panel") {
  GreyPicture picture = panelOf(4, 0.9f);
  paintBox(picture, kFocus, 0.75f);
  paintBox(picture, kRival, 0.0f);
  const Squint s = look(picture);
  CHECK(s.rank == 2);
  CHECK(s.holds < 0.4);
  CHECK(s.elsewhere > s.strength);
}

TEST_CASE("a focus of fine lines melts into its ground") {
  GreyPicture picture = panelOf(4, 0.5f);
  for (int i = 0; i < 20; ++i) paintBox(picture, {{30.0 + i, 30}, {30.5 + i, 60}}, 0.4f);
  for (int i = 0; i < 20; ++i) paintBox(picture, {{30.5 + i, 30}, {31.0 + i, 60}}, 0.6f);
  paintBox(picture, kRival, 0.3f);
  CHECK(look(picture).strength < 0.02);
  CHECK(look(picture).rank == 2);
}

TEST_CASE("the answer hardly depends on the picture's resolution") {
  GreyPicture first = panelOf(3, 0.8f);
  paintBox(first, kFocus, 0.3f);
  paintBox(first, kRival, 0.2f);
  const Squint wanted = look(first);
  for (const double pxPerMm : {2.0, 4.0, 7.0, 11.0}) {
    GreyPicture picture = panelOf(pxPerMm, 0.8f);
    paintBox(picture, kFocus, 0.3f);
    paintBox(picture, kRival, 0.2f);
    const Squint s = look(picture);
    CHECK(s.rank == wanted.rank);
    CHECK(s.strength == doctest::Approx(wanted.strength).epsilon(0.03));
    CHECK(s.contrast == doctest::Approx(wanted.contrast).epsilon(0.05));
    CHECK(s.holds == doctest::Approx(wanted.holds).epsilon(0.03));
  }
}

TEST_CASE("an unrelated contrast elsewhere never betters the focus' rank") {
  CHECK(rc::check("rank", [] {
    const auto grey = [] { return static_cast<float>(*rc::gen::inRange(0, 101)) / 100; };
    GreyPicture picture = panelOf(2, grey());
    paintBox(picture, kFocus, grey());
    const Squint before = look(picture);
    const Point at{*rc::gen::inRange(95, 180) + 0.0, *rc::gen::inRange(5, 80) + 0.0};
    const Vector size{*rc::gen::inRange(2, 15) + 0.0, *rc::gen::inRange(2, 15) + 0.0};
    paintBox(picture, {at, at + size}, grey());
    const Squint after = look(picture);
    RC_ASSERT(after.rank >= before.rank);
    RC_ASSERT(after.holds <= before.holds + 1e-6);
  }));
}

TEST_CASE("a blacker focus on light ground never loses strength") {
  CHECK(rc::check("blacker", [] {
    const auto ground = static_cast<float>(*rc::gen::inRange(60, 101)) / 100;
    double before = -1;
    for (float light = 0.6f; light >= 0; light -= 0.1f) {
      GreyPicture picture = panelOf(2, ground);
      paintEllipse(picture, kFocus, light);
      const double strength = look(picture).strength;
      RC_ASSERT(strength >= before - 1e-9);
      before = strength;
    }
  }));
}

TEST_CASE("a mirrored panel gets the mirrored answer") {
  GreyPicture picture = panelOf(4, 0.7f);
  paintBox(picture, kFocus, 0.5f);
  paintBox(picture, kRival, 0.1f);
  const Squint a = look(picture);
  const Rect mirroredFocus{{200 - kFocus.max.x, kFocus.min.y}, {200 - kFocus.min.x, kFocus.max.y}};
  const GreyPicture mirror = mirroredPicture(picture);
  const Squint b = squintAt(mirror, wholeOf(mirror), mirroredFocus);
  CHECK(a.rank == b.rank);
  CHECK(a.strength == doctest::Approx(b.strength).epsilon(0.01));
  CHECK(a.elsewhereAt.x == doctest::Approx(200 - b.elsewhereAt.x).epsilon(0.01));
}

TEST_CASE("a focus outside its panel is not seen and a panel off the picture says nothing") {
  GreyPicture picture = panelOf(4, 0.7f);
  paintBox(picture, kRival, 0.1f);
  const Squint off = squintAt(picture, wholeOf(picture), Rect{{300, 0}, {310, 9}});
  CHECK_FALSE(off.seen);
  CHECK(off.rank == 2);
  CHECK(off.holds == 0);
  CHECK_FALSE(squintAt(picture, polygonOf(Rect{{500, 0}, {600, 90}}), kFocus).seen);
}

TEST_CASE("a balloon is no rival of the focus") {
  GreyPicture picture = panelOf(4, 0.4f);
  paintBox(picture, kFocus, 0.6f);
  paintEllipse(picture, kRival, 1);
  CHECK(look(picture).rank == 2);
  const Squint s = squintAt(picture, wholeOf(picture), kFocus, {kRival});
  CHECK(s.rank == 1);
  CHECK(s.strength == look(picture).strength);
}

TEST_CASE("the focus may be given as an outline") {
  GreyPicture picture = panelOf(4, 0.9f);
  paintEllipse(picture, kFocus, 0.1f);
  const Squint s = squintAt(picture, wholeOf(picture), Region{ellipse(kFocus.centre(), 10, 15)});
  CHECK(s.contrast == doctest::Approx(-0.8).epsilon(0.05));
}

}  // namespace tw
