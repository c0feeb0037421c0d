#include "press/pale_surface.h"

#include <doctest/doctest.h>

#include "press/recorder.h"

namespace tw {

TEST_CASE("inks come paler by the same share of their darkness, paper stays paper") {
  Recorder under;
  PaleSurface pale(under, 0.4);
  Path path;
  path.add({{0, 0}, {1, 1}}, false);
  pale.line(path, {.ink = kBlack});
  pale.line(path, {.ink = kPaper});
  pale.line(path, {.ink = {1, 0.5, 0}});
  REQUIRE(under.pens.size() == 3);
  CHECK(under.pens[0].ink.red == doctest::Approx(0.6));
  CHECK(under.pens[0].ink.isGrey());
  CHECK(under.pens[1].ink == kPaper);
  CHECK(under.pens[2].ink.green == doctest::Approx(0.8));
}

TEST_CASE("clips and groups reach the surface below") {
  Recorder under;
  PaleSurface pale(under, 0.4);
  pale.openGroup("a", "A", true);
  pale.clip(Path(Rect{{0, 0}, {1, 1}}), FillRule::NonZero);
  CHECK(under.depth == 2);
  pale.unclip();
  pale.closeGroup();
  CHECK(under.depth == 0);
  pale.type({.text = "x", .ink = kBlack});
  REQUIRE(under.words.size() == 1);
  CHECK(under.words[0].ink.red == doctest::Approx(0.6));
}

}  // namespace tw
