#include "read/attention.h"

#include <doctest/doctest.h>

#include "read/drawn_picture_test.h"

namespace tw {

namespace {

PanelAttention attend(const GreyPicture& picture, const std::vector<SeenElement>& marked = {}) {
  return attentionOf(picture, wholeOf(picture), marked, AttentionWeights{});
}

/// A grey panel with a dark figure to the left.
GreyPicture figurePanel() {
  GreyPicture picture = paper(300, 240, 0.7f);
  paintEllipse(picture, {{40, 60}, {100, 200}}, 0.1f);
  paintEllipse(picture, {{55, 75}, {85, 105}}, 0.6f);
  return picture;
}

}  // namespace

TEST_CASE("without marks the top spot is the balloon or else the figure") {
  GreyPicture picture = figurePanel();
  const PanelAttention bare = attend(picture);
  REQUIRE_FALSE(bare.spots.empty());
  CHECK(Rect{{35, 55}, {105, 205}}.contains(bare.spots.front().at));
  CHECK(bare.spots.front().kind == SeenKind::Spot);
  const Rect balloon{{160, 20}, {280, 90}};
  paintBalloon(picture, balloon, true);
  const PanelAttention lettered = attend(picture);
  REQUIRE_FALSE(lettered.spots.empty());
  CHECK(balloon.contains(lettered.spots.front().at));
  CHECK(lettered.spots.front().what == "balloon");
  CHECK_FALSE(lettered.spots.front().marked);
  REQUIRE(lettered.proposed.size() == 1);
}

TEST_CASE("a mark takes the place of what would be proposed for its kind") {
  GreyPicture picture = figurePanel();
  paintBalloon(picture, {{160, 20}, {280, 90}}, true);
  const Rect face{{220, 150}, {260, 200}}, copy{{120, 180}, {200, 230}};
  const PanelAttention a = attend(picture, {{.kind = SeenKind::Face, .box = face, .name = "mara"}});
  REQUIRE_FALSE(a.spots.empty());
  bool faceSpot = false;
  for (const Spot& s : a.spots) faceSpot |= s.kind == SeenKind::Face && s.marked && s.box == face;
  CHECK(faceSpot);
  const PanelAttention b = attend(picture, {{.kind = SeenKind::Copy, .box = copy}});
  CHECK(b.proposed.empty());
  CHECK(copy.contains(b.spots.front().at));
  CHECK(b.spots.front().marked);
}

TEST_CASE("marks of other panels do not count") {
  const GreyPicture picture = figurePanel();
  const PanelAttention a =
      attentionOf(picture, polygonOf(Rect{{0, 0}, {150, 240}}),
                  {{.kind = SeenKind::Face, .box = {{200, 100}, {240, 140}}}}, AttentionWeights{});
  CHECK(a.marked.empty());
}

TEST_CASE("spots come strongest first and stand apart") {
  GreyPicture picture = figurePanel();
  paintBalloon(picture, {{160, 20}, {280, 90}}, true);
  const std::vector<Spot> spots = attend(picture).spots;
  REQUIRE(spots.size() >= 2);
  CHECK(spots.size() <= kMostSpots);
  for (std::size_t i = 1; i < spots.size(); ++i) {
    CHECK(spots[i].strength <= spots[i - 1].strength);
    for (std::size_t j = 0; j < i; ++j) CHECK((spots[i].at - spots[j].at).length() >= 49);
  }
  CHECK(spots.front().strength <= 1);
}

TEST_CASE("a mirrored panel draws the eye to the mirrored place") {
  GreyPicture picture = figurePanel();
  paintBalloon(picture, {{160, 20}, {280, 90}}, true);
  const Spot a = attend(picture).spots.front(), b = attend(mirroredPicture(picture)).spots.front();
  CHECK(a.at.x == doctest::Approx(300 - b.at.x).epsilon(0.04));
  CHECK(a.at.y == doctest::Approx(b.at.y).epsilon(0.04));
}

TEST_CASE("the same panel scanned at twice the size draws the eye to the same place") {
  for (const double scale : {1.0, 2.0, 3.0}) {
    GreyPicture picture = paper(static_cast<int>(300 * scale), static_cast<int>(240 * scale), 0.7f);
    picture.mmPerPx = 1 / scale;
    paintEllipse(picture, {{40, 60}, {100, 200}}, 0.1f);
    paintBalloon(picture, {{160, 20}, {280, 90}}, true);
    const Spot top = attend(picture).spots.front();
    CHECK(top.at.x == doctest::Approx(220).epsilon(0.1));
    CHECK(top.at.y == doctest::Approx(55).epsilon(0.2));
  }
}

TEST_CASE("a blank panel draws the eye to its middle and a panel off the picture nowhere") {
  const GreyPicture blank = paper(200, 160);
  const PanelAttention a = attend(blank);
  REQUIRE_FALSE(a.spots.empty());
  CHECK((a.spots.front().at - Point{100, 80}).length() < 5);
  CHECK(attentionOf(blank, polygonOf(Rect{{300, 0}, {400, 90}}), {}, {}).spots.empty());
}

}  // namespace tw
