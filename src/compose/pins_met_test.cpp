#include "compose/pins_met.h"

#include "arrange/read_notation.h"
#include "compose/small_page.h"

namespace tw {

namespace {

/// Pins put on the small page.
PinsMet metOn(SmallPage& page, const Pins& pins) {
  page.page().pins = pins;
  return pinsMet(page.wishes());
}

}  // namespace

TEST_CASE("without pins everything is free and nothing is told") {
  SmallPage page;
  const PinsMet met = metOn(page, {});
  CHECK(met.arrangesFreely());
  CHECK(met.unkept.empty());
  for (std::size_t i = 0; i < 3; ++i) CHECK(met.stagingOf(i) == nullptr);
}

TEST_CASE("a rough's arrangement and treatment are pins that can be met") {
  SmallPage page;
  const PinsMet met = metOn(page, {page.rough.arrangement, page.rough.treatment, {}});
  REQUIRE(met.tree);
  CHECK(*met.tree == packed(*treeNoted(page.rough.arrangement)));
  REQUIRE(met.treatment);
  CHECK(nameOf(*met.treatment) == page.rough.treatment);
  CHECK(met.unkept.empty());
}

TEST_CASE("an arrangement of another number of panels is told with both numbers") {
  SmallPage page;
  const PinsMet met = metOn(page, {"(1 2 3 4 5)", "", {}});
  CHECK_FALSE(met.tree);
  REQUIRE(met.unkept.size() == 1);
  CHECK(met.unkept.front().find("has 5 panels and the page 3") != std::string::npos);
}

TEST_CASE("a treatment that the pinned arrangement cannot have is given up for it") {
  SmallPage page;
  // A ground's insets are one panel fewer, so three panels cannot lie on one of the three.
  const PinsMet met = metOn(page, {"[1 2 3]", "ground", {}});
  CHECK(met.tree);
  CHECK_FALSE(met.treatment);
  REQUIRE(met.unkept.size() == 1);
  CHECK(met.unkept.front().find("ground") != std::string::npos);
}

TEST_CASE("pins that nobody can read are told") {
  SmallPage page;
  const PinsMet met = metOn(page, {"[[[", "torn", {}});
  CHECK(met.arrangesFreely());
  CHECK(met.unkept.size() == 2);
}

TEST_CASE("a pinned staging goes to its panel and lost panels and people are told") {
  SmallPage page;
  Pins pins;
  pins.stagings["p4-2"] = page.rough.panels[1].staging;
  pins.stagings["p4-9"] = page.rough.panels[0].staging;
  pins.stagings["p4-3"] = page.rough.panels[1].staging;  // Bo is not in the third panel
  const PinsMet met = metOn(page, pins);
  CHECK(met.stagingOf(0) == nullptr);
  REQUIRE(met.stagingOf(1) != nullptr);
  CHECK(*met.stagingOf(1) == page.rough.panels[1].staging);
  REQUIRE(met.unkept.size() == 2);
  CHECK(met.unkept[0].find("panel 3 shows bo") != std::string::npos);
  CHECK(met.unkept[1].find("p4-9") != std::string::npos);
}

}  // namespace tw
