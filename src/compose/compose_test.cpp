#include "compose/compose.h"

#include <algorithm>

#include "compose/choose_different.h"
#include "compose/layout_of.h"
#include "compose/layout_staging.h"
#include "compose/small_page.h"
#include "job/document.h"

namespace tw {

namespace {

Composed found(const SmallPage& page, const ComposeOptions& options) {
  Progress progress;
  auto out = compose(page.job(), *page.wishes().page, page.workshop(), options, progress);
  REQUIRE(out);
  return std::move(*out);
}

Measured shown(const Rough& rough, const SmallPage& page) {
  Measured m;
  m.rough = rough;
  m.layout = layoutOf(rough, page.wishes());
  return m;
}

/// Panels that are staged alike in both.
int picturesAlike(const Rough& a, const Rough& b) {
  int alike = 0;
  for (std::size_t i = 0; i < a.panels.size(); ++i)
    alike += stagedAlike(a.panels[i].staging.choice, b.panels[i].staging.choice);
  return alike;
}

std::string textOf(const Composed& composed) {
  Page page;
  page.roughs = composed.roughs;
  return writePageText(page);
}

}  // namespace

TEST_CASE("a pinned arrangement gives roughs that differ by their stagings alone") {
  SmallPage page;
  page.page().pins.arrangement = page.rough.arrangement;
  page.page().pins.treatment = page.rough.treatment;
  const Composed out = found(page, {.keep = 4});
  CHECK(out.unkept.empty());
  REQUIRE(out.roughs.size() == 4);
  for (const Rough& rough : out.roughs) {
    CHECK(rough.arrangement == page.rough.arrangement);
    CHECK(rough.treatment == page.rough.treatment);
    for (const Rough& other : out.roughs)
      if (other.name != rough.name) CHECK_FALSE(isSamePage(shown(rough, page), shown(other, page)));
  }
}

TEST_CASE("a pinned treatment alone leaves the arrangement free") {
  SmallPage page;
  page.page().pins.treatment = "bled";
  const Composed out = found(page, {.keep = 3});
  REQUIRE(out.roughs.size() == 3);
  for (const Rough& rough : out.roughs) CHECK(rough.treatment == "bled");
  CHECK((out.roughs[0].arrangement != out.roughs[1].arrangement ||
         out.roughs[0].arrangement != out.roughs[2].arrangement));
}

TEST_CASE("a treatment that the brief forbids is left free and told") {
  SmallPage page;
  page.page().brief.bleeds = false;
  page.page().pins.treatment = "bled";
  const Composed out = found(page, {.keep = 2});
  CHECK(out.roughs.size() == 2);
  REQUIRE(out.unkept.size() == 1);
  CHECK(out.unkept.front().find("bled") != std::string::npos);
}

TEST_CASE("a pinned staging is in every rough with what the hand set in it") {
  SmallPage page;
  Staging pinned = page.rough.panels[1].staging;
  pinned.choice.shot = ShotSize::CloseUp;
  pinned.choice.lensMm = 60;
  pinned.figures[0].turnsDeg["left-shoulder"] = {10, 20, 0};
  page.page().pins.stagings["p4-2"] = pinned;
  const Composed out = found(page, {.keep = 3});
  REQUIRE(out.roughs.size() == 3);
  for (const Rough& rough : out.roughs) {
    const auto panel = std::ranges::find(rough.panels, "p4-2", &RoughPanel::beat);
    REQUIRE(panel != rough.panels.end());
    CHECK(panel->staging.choice == pinned.choice);
    CHECK(panel->staging.figures[0].turnsDeg == pinned.figures[0].turnsDeg);
  }
}

TEST_CASE("roughs that are to be unlike others are none of them and lie further off") {
  SmallPage page;
  const Composed first = found(page, {.keep = 3});
  const Composed others = found(page, {.keep = 3, .unlike = first.roughs});
  REQUIRE(others.roughs.size() == 3);
  for (const Rough& rough : others.roughs)
    for (const Rough& old : first.roughs)
      CHECK(unlikeness(shown(rough, page), shown(old, page), page.wishes().sheet) > 0.05);
}

TEST_CASE("no rough that is to be unlike others has the arrangement of one of them") {
  SmallPage page;
  for (int i = 4; i <= 5; ++i) page.page().beats.push_back(SmallPage::beat(i, "stand"));
  const Composed first = found(page, {.keep = 6});
  const std::vector<Rough> named{first.roughs[0], first.roughs[1]};
  const Composed others = found(page, {.keep = 6, .unlike = named});
  CHECK(others.unkept.empty());
  REQUIRE(others.roughs.size() == 6);
  for (const Rough& rough : others.roughs)
    for (const Rough& old : named) {
      CAPTURE(rough.arrangement);
      CAPTURE(rough.treatment);
      CHECK(rough.arrangement != old.arrangement);
      CHECK(picturesAlike(rough, old) < 5);
    }
}

TEST_CASE("where other arrangements are too few the farthest pages come and it is said") {
  SmallPage page;
  page.page().pins.arrangement = page.rough.arrangement;
  const Composed others = found(page, {.keep = 3, .unlike = {page.rough}});
  REQUIRE(others.roughs.size() == 3);
  REQUIRE(others.unkept.size() == 1);
  CHECK(others.unkept.front().find("Only 0 of the 3 roughs found have another arrangement") == 0);
  for (const Rough& rough : others.roughs)
    CHECK(unlikeness(shown(rough, page), shown(page.rough, page), page.wishes().sheet) > 0.15);
}

TEST_CASE("when everything is pinned there is one page and it is said that there are no more") {
  SmallPage page;
  page.page().pins.arrangement = page.rough.arrangement;
  page.page().pins.treatment = page.rough.treatment;
  for (const RoughPanel& panel : page.rough.panels)
    page.page().pins.stagings[panel.beat] = panel.staging;
  const Composed one = found(page, {.keep = 3});
  REQUIRE(one.roughs.size() == 1);
  CHECK(isSamePage(shown(one.roughs[0], page), shown(page.rough, page)));
  REQUIRE(one.unkept.size() == 1);
  CHECK(one.unkept.front().find("Only 1 of the 3") != std::string::npos);
  const Composed none = found(page, {.keep = 3, .unlike = {page.rough}});
  CHECK(none.roughs.empty());
  CHECK(none.unkept.size() == 1);
}

TEST_CASE("a rough of another state of the script cannot be avoided and that is told") {
  SmallPage page;
  Rough old = page.rough;
  old.name = "Q";
  old.panels.pop_back();
  const Composed out = found(page, {.keep = 1, .unlike = {old}});
  CHECK(out.roughs.size() == 1);
  REQUIRE(out.unkept.size() == 1);
  CHECK(out.unkept.front().find("Rough Q") != std::string::npos);
}

TEST_CASE("pins and roughs to be unlike give the same bytes at any number of threads") {
  SmallPage page;
  page.page().pins.stagings["p4-1"] = page.rough.panels[0].staging;
  ComposeOptions options{.keep = 3, .threads = 1, .unlike = {page.rough}};
  const std::string one = textOf(found(page, options));
  for (const unsigned threads : {2u, 5u}) {
    options.threads = threads;
    CHECK(textOf(found(page, options)) == one);
  }
}

}  // namespace tw
