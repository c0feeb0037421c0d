#include "read/eye_page.h"

#include <doctest/doctest.h>

#include "read/eye_pages_test.h"

namespace tw {
namespace {

using namespace test;

double passedOver(const SeenPage& page, std::size_t panel) {
  return EyePage(page, shippedEyes()).panels()[panel].passedOver;
}

SeenPage pageOfCopy(int words) {
  SeenPage page = gridPage(3, 2);
  for (SeenPanel& panel : page.panels) {
    addCopy(panel, 1, words);
    addFigure(panel, 0.5);
  }
  return page;
}

/// Two panels one above the other, a tall one beside them, and a tier below.
SeenPage stackPage() {
  SeenPage page;
  page.page = kEyePage;
  page.panels = {panelAt(0, 0, 88, 88), panelAt(0, 92, 88, 88), panelAt(92, 0, 88, 180),
                 panelAt(0, 184, 180, 86)};
  for (SeenPanel& panel : page.panels) addCopy(panel, 1, 6);
  return page;
}

// Chiba, Tanaka, Shoji, Toyama 2007: textless panels are skipped more.
TEST_CASE("a panel without copy is passed over more") {
  SeenPage page = pageOfCopy(6);
  const double with = passedOver(page, 2);
  std::erase_if(page.panels[2].elements,
                [](const SeenElement& e) { return e.kind == SeenKind::Copy; });
  CHECK(passedOver(page, 2) > 2 * with);
}

// Dunst, Hartel, Hohenstein, Laubrock 2016: a panel continuing the previous one is skipped more.
TEST_CASE("a panel that goes on from the one before is passed over more") {
  SeenPage page = pageOfCopy(6);
  const double fresh = passedOver(page, 2);
  page.panels[2].continues = true;
  CHECK(passedOver(page, 2) > fresh);
}

// Omori, Ishii, Kurata 2004: the panel just before a text-dense panel gets skipped; moving that
// balloon farther away cut skipping.
TEST_CASE("dense copy ahead makes a panel passed over and less so the farther it stands") {
  SeenPage page = pageOfCopy(6);
  const double plain = passedOver(page, 2);
  SeenElement& copy = page.panels[3].elements.front();
  copy.words = 40;
  const double dense = passedOver(page, 2);
  CHECK(dense > 1.5 * plain);
  double before = dense;
  for (int step = 1; step <= 5; ++step) {
    copy.box.min.x += 10;
    copy.box.max.x += 10;
    const double farther = passedOver(page, 2);
    CHECK(farther < before);
    CHECK(farther > plain);
    before = farther;
  }
}

// "Coming up next: the extent of the perceptual window in comic reading", 2025: two panels ahead.
TEST_CASE("copy two panels ahead pulls and copy three ahead does not") {
  SeenPage page = pageOfCopy(6);
  const double plain = passedOver(page, 0);
  page.panels[2].elements.front().words = 40;
  CHECK(passedOver(page, 0) > plain);
  page = pageOfCopy(6);
  page.panels[3].elements.front().words = 40;
  CHECK(passedOver(page, 0) == plain);
}

// Omori, Ishii, Kurata 2004, 6 cases: the lower panel of a stack beside a tall panel is skipped;
// turning the stack into a row cut skipping.
TEST_CASE("the lower panel of a stack beside a tall one is passed over more than in a row") {
  const SeenPage stack = stackPage();
  SeenPage row = stack;
  row.panels[0].outline = polygonOf(Rect{{0, 0}, {57, 180}});
  row.panels[1].outline = polygonOf(Rect{{61, 0}, {118, 180}});
  row.panels[2].outline = polygonOf(Rect{{122, 0}, {180, 180}});
  CHECK(passedOver(stack, 1) > 2 * passedOver(stack, 0));
  CHECK(passedOver(stack, 1) > passedOver(row, 1));
}

TEST_CASE("a panel of half the page is never passed over") {
  SeenPage page;
  page.page = kEyePage;
  page.panels = {panelAt(0, 0, 180, 135), panelAt(0, 139, 180, 131)};
  CHECK(passedOver(page, 0) == 0);
  CHECK(passedOver(page, 1) < 0.01);
}

TEST_CASE("chances on any of these pages are chances") {
  for (const SeenPage& page : {pageOfCopy(0), pageOfCopy(60), stackPage()}) {
    const EyePage ready(page, shippedEyes());
    for (const EyePanel& panel : ready.panels()) {
      CHECK(panel.passedOver >= 0);
      CHECK(panel.passedOver <= 1);
      CHECK(panel.cameBack >= 0);
      CHECK(panel.cameBack <= 1);
    }
  }
}

// Kirtley, Murray, Vaughan, Tatler 2018: larger panels and pictures about figures, longer dwell.
TEST_CASE("larger panels and pictures of more things get more looks") {
  SeenPage page = stackPage();
  CHECK(EyePage(page, shippedEyes()).panels()[2].looks >
        EyePage(page, shippedEyes()).panels()[0].looks);
  SeenPage peopled = page;
  addFigure(peopled.panels[0], 0.3);
  CHECK(EyePage(peopled, shippedEyes()).panels()[0].looks >
        EyePage(page, shippedEyes()).panels()[0].looks);
}

// Laubrock and others 2018; Cerf et al. 2008: faces first.
TEST_CASE("a face draws more than the body under it and the focus more than another face") {
  SeenPage page = gridPage(2, 2);
  addFigure(page.panels[0], 0.3, true);
  addFigure(page.panels[0], 0.7, false);
  const EyePage ready(page, shippedEyes());
  const std::vector<EyePart>& parts = ready.panels()[0].picture;
  REQUIRE(parts.size() == 5);
  CHECK(parts[0].weight > parts[2].weight);
  CHECK(parts[2].weight > parts[3].weight);
  CHECK(parts[3].weight > parts[4].weight);  // the ground
}

// Gaze cueing g = 0.23: an odds ratio of about 1.5 at most.
TEST_CASE("what the lead aims at is looked at a little more") {
  SeenPage page = gridPage(2, 2);
  addFigure(page.panels[0], 0.2, true);
  addFigure(page.panels[0], 0.8, false);
  const double before = EyePage(page, shippedEyes()).panels()[0].picture[2].weight;
  page.panels[0].lead = {page.panels[0].elements[0].box.centre(), {1, 0}, 1, "looks"};
  const double after = EyePage(page, shippedEyes()).panels()[0].picture[2].weight;
  CHECK(after > before);
  CHECK(after < 1.6 * before);
}

TEST_CASE("places come back to where they were on the page") {
  SeenPage page = gridPage(2, 2);
  page.page = {{0, 0}, {180, 270}};
  const EyePage ready(page, shippedEyes());
  const Point p = ready.onPage(ready.panels()[3].box.min);
  CHECK(p.x == doctest::Approx(92));
  CHECK(p.y == doctest::Approx(137));
}

TEST_CASE("the ground under insets is looked at about its focus") {
  SeenPage page;
  page.page = kEyePage;
  page.panels = {panelAt(0, 0, 180, 270), panelAt(40, 90, 100, 90)};
  page.panels[1].layer = 1;
  page.panels[0].focus = {90, 40};
  const EyePage ready(page, shippedEyes());
  const Point at = ready.onPage(ready.panels()[0].picture.back().aim);
  CHECK(at.y == doctest::Approx(40));
}

TEST_CASE("panels beyond the most that a page can have are left out") {
  SeenPage page;
  page.page = kEyePage;
  for (int i = 0; i < 70; ++i) page.panels.push_back(panelAt(i % 10 * 18, i / 10 * 30, 16, 28));
  CHECK(EyePage(page, shippedEyes()).count() == static_cast<int>(kMostPanels));
}

}  // namespace
}  // namespace tw
