#include "letter/held_copy.h"

#include <doctest/doctest.h>

#include "geometry/polygon.h"
#include "letter/placed_copy.h"

namespace tw {
namespace {

const Letterer& letterer() {
  static const Letterer one = std::move(*Letterer::make());
  return one;
}

}  // namespace

TEST_CASE("only what the artist placed is held and as it stands") {
  std::vector<CopyItem> items(2);
  items[0].id = "c1";
  items[0].text = "Listen.";
  items[1].id = "c2";
  items[1].text = "To what?";
  LetterRequest request;
  request.items = &items;
  request.panel = polygonOf(Rect{{0, 0}, {80, 60}});
  request.live = {{0, 0}, {80, 60}};
  request.standing = letterer().place(request).balloons;
  request.standing[1].byHand = true;
  const auto held = heldIn(request, letterer());
  CHECK_FALSE(held[0]);
  REQUIRE(held[1]);
  CHECK(held[1]->balloon == request.standing[1]);
  CHECK((held[1]->copy.middle - bounds(request.standing[1].outline).centre()).length() < 0.01);
}

TEST_CASE("faces under a balloon are measured as Clipper measures them") {
  PlacedBalloon balloon;
  balloon.outline = polygonOf(Rect{{0, 0}, {10, 10}});
  CHECK(faceUnder(balloon, {polygonOf(Rect{{8, 8}, {12, 12}}),
                            polygonOf(Rect{{20, 0}, {30, 9}})}) == doctest::Approx(4));
}

}  // namespace tw
