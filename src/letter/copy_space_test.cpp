#include "letter/copy_space.h"

#include <doctest/doctest.h>

#include "geometry/polygon.h"

namespace tw {
namespace {

const Letterer& letterer() {
  static const Letterer one = std::move(*Letterer::make());
  return one;
}

LetterRequest panel(const std::vector<CopyItem>& items) {
  LetterRequest request;
  request.items = &items;
  request.panel = polygonOf(Rect{{0, 0}, {80, 60}});
  request.live = {{0, 0}, {80, 60}};
  request.panelsOnPage = 6;
  return request;
}

CopyItem said(const std::string& text, int words) {
  CopyItem item;
  item.text = text;
  item.words = words;
  return item;
}

}  // namespace

TEST_CASE("a face takes its area from the free room") {
  const std::vector<CopyItem> items{said("Listen.", 1)};
  LetterRequest request = panel(items);
  const CopySpace empty = copySpace(request, letterer());
  request.faces = {polygonOf(Rect{{30, 30}, {40, 42}})};
  const CopySpace withFace = copySpace(request, letterer());
  CHECK(empty.freeMm2 - withFace.freeMm2 == doctest::Approx(120));
  CHECK(empty.panelMm2 == doctest::Approx(4800));
  CHECK(empty.freeMm2 < empty.panelMm2);
}

TEST_CASE("twice the copy wants twice the room") {
  const std::vector<CopyItem> one{said("Then who is ringing it?", 5)};
  const std::vector<CopyItem> two{one[0], one[0]};
  const CopySpace a = copySpace(panel(one), letterer()), b = copySpace(panel(two), letterer());
  CHECK(b.wantedMm2 == doctest::Approx(2 * a.wantedMm2));
  CHECK(b.share() == doctest::Approx(2 * a.share()));
}

TEST_CASE("words are held against the limit for six panels on the page") {
  // 35 words: trade guides, production facts on lettering.
  std::vector<CopyItem> items{said("x", 20), said("x", 16)};
  CopySpace space = copySpace(panel(items), letterer());
  CHECK(space.words == 36);
  CHECK(space.mostWords == 35);
  CHECK(space.tooManyWords());
  items[1].words = 15;
  space = copySpace(panel(items), letterer());
  CHECK_FALSE(space.tooManyWords());
  items[0].words = 26;
  items[1].words = 1;
  CHECK(copySpace(panel(items), letterer()).tooManyWords());
}

TEST_CASE("a panel without copy wants nothing") {
  const std::vector<CopyItem> none;
  const CopySpace space = copySpace(panel(none), letterer());
  CHECK(space.wantedMm2 == 0);
  CHECK(space.share() == 0);
  CHECK_FALSE(space.tooManyWords());
}

}  // namespace tw
