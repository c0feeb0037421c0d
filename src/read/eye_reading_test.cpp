#include "read/eye_reading.h"

#include <doctest/doctest.h>
#include <rapidcheck.h>

#include <cstring>
#include <numeric>

#include "read/eye_pages_test.h"

namespace tw {
namespace {

using namespace test;

/// Panels of a grid with so many texts, faces and bodies each, spread evenly.
SeenPage pageOfDensity(int rows, int columns, double texts, int words, double figures) {
  SeenPage page = gridPage(rows, columns);
  double textsDue = 0, figuresDue = 0;
  for (SeenPanel& panel : page.panels) {
    textsDue += texts;
    figuresDue += figures;
    addCopy(panel, static_cast<int>(textsDue), words);
    for (int i = 0; i < static_cast<int>(figuresDue); ++i)
      addFigure(panel, (i + 1) / (figuresDue + 1), i == 0);
    textsDue -= std::floor(textsDue);
    figuresDue -= std::floor(figuresDue);
  }
  return page;
}

SeenPage talkingPage() {
  return pageOfDensity(3, 2, 1.42, 8, 1.14);
}

/// Fixations on a page of 8.5 panels: the mean of one of 8 and one of 9.
double looksAtEightAndAHalf(double texts, int words) {
  return (eyesOn(pageOfDensity(4, 2, texts, words, 1.14)).looks +
          eyesOn(pageOfDensity(3, 3, texts, words, 1.14)).looks) /
         2;
}

// Omori, Ishii, Kurata 2004: 20.3 fixations a page at 8.5 panels. Density of Manga109: 1.42 texts
// and 1.14 faces a frame. How many words stood on those pages is not known, so the published
// figure must lie between pages without copy and pages whose texts take two words.
TEST_CASE("a page of eight and a half panels takes about twenty looks") {
  const double without = looksAtEightAndAHalf(0, 0), shortest = looksAtEightAndAHalf(1.42, 1);
  const double two = looksAtEightAndAHalf(1.42, 2);
  CAPTURE(without);
  CAPTURE(shortest);
  CAPTURE(two);
  CHECK(without < 20.3);
  CHECK(shortest > 20.3);
  CHECK((without + shortest) / 2 == doctest::Approx(20.3).epsilon(0.15));
  CHECK(two < 2 * 20.3);
}

// Rasamimanana et al.: less time on pictures than on balloons, with fewer and shorter fixations;
// first fixation more on the picture; more returns to pictures than to balloons.
TEST_CASE("copy gets more and longer looks than pictures and pictures the first look") {
  for (const PanelEyes& eyes : eyesOn(talkingPage()).panels) {
    CHECK(eyes.pictureMs < eyes.copyMs);
    CHECK(eyes.pictureLooks < eyes.copyLooks);
    CHECK(eyes.pictureMs / eyes.pictureLooks < eyes.copyMs / eyes.copyLooks);
    CHECK(eyes.firstOnPicture > 0.6);
    CHECK(eyes.firstOnPicture < 0.85);
    CHECK(eyes.returnsToPicture > 2 * eyes.returnsToCopy);
  }
}

// Dunst et al. 2016: many pictures are never fixated or seen peripherally.
TEST_CASE("some pictures with copy are never looked at") {
  const SeenPage page = talkingPage();
  int never = 0;
  constexpr int kReaders = 300;
  for (int r = 0; r < kReaders; ++r) {
    const EyePath path = eyePathOf(page, shippedEyes(), 1, static_cast<std::uint64_t>(r));
    bool looked = false;
    for (const EyeFixation& f : path.fixations) looked |= f.panel == 2 && f.on != SeenKind::Copy;
    never += !looked;
  }
  CHECK(never > 0.08 * kReaders);
  CHECK(never < 0.4 * kReaders);
}

// Kirtley et al. 2018: more words and larger panels, longer dwell. Ikuta et al. 2023: in
// proportion to the text.
TEST_CASE("dwell grows in proportion to words") {
  std::vector<double> dwell;
  for (const int words : {10, 20, 30}) {
    SeenPage page = gridPage(3, 2);
    for (SeenPanel& panel : page.panels) addCopy(panel, 1, 10);
    page.panels[2].elements.front().words = words;
    page.panels[2].elements.front().characters = 4 * words;
    dwell.push_back(eyesOn(page, 2000).panels[2].dwellMs);
  }
  CHECK(dwell[2] - dwell[1] == doctest::Approx(dwell[1] - dwell[0]).epsilon(0.05));
  CHECK((dwell[1] - dwell[0]) / 10 > 180);  // ms a word
  CHECK((dwell[1] - dwell[0]) / 10 < 270);
}

TEST_CASE("a larger panel is looked at longer") {
  SeenPage page;
  page.page = kEyePage;
  page.panels = {panelAt(0, 0, 56, 133), panelAt(60, 0, 120, 133), panelAt(0, 137, 180, 133)};
  const EyeReading reading = eyesOn(page);
  CHECK(reading.panels[1].dwellMs > reading.panels[0].dwellMs);
  CHECK(reading.panels[2].dwellMs > reading.panels[1].dwellMs);
}

// Chiba et al. 2007; Omori et al. 2004 — as shares of readers, not only as chances.
TEST_CASE("readers pass over textless panels and panels before dense copy more") {
  SeenPage page = pageOfDensity(3, 2, 1, 6, 1);
  const double plain = eyesOn(page, 3000).panels[2].passedOver;
  SeenPage dense = page;
  dense.panels[3].elements.front().words = 45;
  CHECK(eyesOn(dense, 3000).panels[2].passedOver > plain);
  SeenPage textless = page;
  textless.panels[2].elements.erase(textless.panels[2].elements.begin());
  const PanelEyes mute = eyesOn(textless, 3000).panels[2];
  CHECK(mute.passedOver > 2 * plain);
  CHECK(mute.neverSeen < mute.passedOver);  // some go back
}

/// Two panels one above the other beside a tall one, and a tier below; or the same three in a row.
SeenPage mutePage(const std::vector<Rect>& boxes) {
  SeenPage page;
  page.page = kEyePage;
  for (const Rect& b : boxes)
    page.panels.push_back(panelAt(b.min.x, b.min.y, b.width(), b.height()));
  return page;
}

// Omori et al. 2004, 6 cases.
TEST_CASE("readers pass over the lower panel of a stack more than the same panel in a row") {
  const Rect tier{{0, 184}, {180, 270}};
  const SeenPage stack =
      mutePage({{{0, 0}, {88, 88}}, {{0, 92}, {88, 180}}, {{92, 0}, {180, 180}}, tier});
  const SeenPage row =
      mutePage({{{0, 0}, {57, 136}}, {{61, 0}, {118, 136}}, {{122, 0}, {180, 180}}, tier});
  CHECK(eyesOn(stack, 3000).panels[1].passedOver > 1.3 * eyesOn(row, 3000).panels[1].passedOver);
}

// 10 to 15 of a hundred moves go back (regressions, Rayner; for pages our reading of it), more of
// them to pictures than to balloons (Rasamimanana et al.).
TEST_CASE("about one reader in ten looks back at the panel before and mostly at its picture") {
  const EyeReading reading = eyesOn(talkingPage(), 3000);
  for (std::size_t i = 0; i + 1 < reading.panels.size(); ++i) {
    CHECK(reading.panels[i].cameBack > 0.07);
    CHECK(reading.panels[i].cameBack < 0.16);
  }
  EyePathModel neverBack = shippedEyes();
  neverBack.glanceBack = 0;
  EyeOptions options;
  options.readers = 3000;
  const EyeReading straight = readEyes(talkingPage(), neverBack, options);
  double copyLooks = 0, pictureLooks = 0;
  for (std::size_t i = 0; i < reading.panels.size(); ++i) {
    copyLooks += reading.panels[i].copyLooks - straight.panels[i].copyLooks;
    pictureLooks += reading.panels[i].pictureLooks - straight.panels[i].pictureLooks;
  }
  CHECK(copyLooks > 0);
  CHECK(pictureLooks > 2 * copyLooks);
}

// Chiba et al. 2007: odd arrangements cause skips, then going back.
TEST_CASE("some of those who pass over a panel come back to it") {
  SeenPage page = talkingPage();
  page.panels.back().elements.clear();  // the last one too
  for (const PanelEyes& eyes : eyesOn(page, 4000).panels) {
    CHECK(eyes.neverSeen < 0.8 * eyes.passedOver);
    CHECK(eyes.neverSeen > 0.1 * eyes.passedOver);
  }
}

/// Mean distance between looks that follow each other in one panel, both on copy or both not.
double meanJump(const SeenPage& page, bool onCopy) {
  double sum = 0;
  int jumps = 0;
  for (std::uint64_t reader = 0; reader < 200; ++reader) {
    const EyePath path = eyePathOf(page, shippedEyes(), 1, reader);
    for (std::size_t i = 1; i < path.fixations.size(); ++i) {
      const EyeFixation &a = path.fixations[i - 1], &b = path.fixations[i];
      const bool both = (a.on == SeenKind::Copy) == onCopy && (b.on == SeenKind::Copy) == onCopy;
      if (!both || a.panel != b.panel) continue;
      sum += (b.at - a.at).length();
      ++jumps;
    }
  }
  return sum / std::max(1, jumps);
}

// Kirtley et al. 2018: saccades longer in pictures than in text.
TEST_CASE("the eye jumps farther in pictures than in copy") {
  SeenPage page = pageOfDensity(3, 2, 1, 12, 0);
  for (SeenPanel& panel : page.panels) panel.elements.front().box.max.x -= 40;  // 40 mm of type
  const double inPictures = meanJump(pageOfDensity(3, 2, 0, 0, 2), false);
  CHECK(inPictures > 1.2 * meanJump(page, true));
}

TEST_CASE("readers enter a grid at its first panel") {
  const EyeReading reading = eyesOn(talkingPage());
  CHECK(reading.panels[0].enteredFirst > 0.9);
  double sum = 0;
  for (const PanelEyes& eyes : reading.panels) sum += eyes.enteredFirst;
  CHECK(sum == doctest::Approx(1));
}

TEST_CASE("most readers go from each panel of a grid to the next and fewer in an open layout") {
  const EyeReading grid = eyesOn(talkingPage());
  CHECK(grid.handedOn > 0.8);
  const EyeReading open = eyesOn(mutePage(
      {{{0, 0}, {88, 133}}, {{92, 0}, {180, 270}}, {{0, 137}, {88, 270}}}));  // tall one second
  CHECK(open.panels[0].handedOn < 0.5);
}

TEST_CASE("page and panels agree") {
  const EyeReading reading = eyesOn(talkingPage(), 300);
  double looks = 0, ms = 0;
  for (const PanelEyes& eyes : reading.panels) {
    looks += eyes.looks;
    ms += eyes.dwellMs;
    CHECK(eyes.copyLooks + eyes.pictureLooks == doctest::Approx(eyes.looks));
    CHECK(eyes.copyMs + eyes.pictureMs == doctest::Approx(eyes.dwellMs));
  }
  CHECK(looks == doctest::Approx(reading.looks));
  CHECK(ms == doctest::Approx(reading.ms));
  CHECK(reading.quickMs < reading.ms);
  CHECK(reading.slowMs > reading.ms);
}

TEST_CASE("all shares on any page are shares") {
  CHECK(rc::check("0 to 1", [] {
    SeenPage page = gridPage(*rc::gen::inRange(1, 4), *rc::gen::inRange(1, 4));
    for (SeenPanel& panel : page.panels) {
      addCopy(panel, *rc::gen::inRange(0, 3), *rc::gen::inRange(1, 60));
      panel.continues = *rc::gen::arbitrary<bool>();
      panel.lead = {panel.focus, {-1, 0.4}, 1, ""};
    }
    const EyeReading reading = eyesOn(page, 40);
    for (const PanelEyes& e : reading.panels)
      for (const double share :
           {e.enteredFirst, e.passedOver, e.neverSeen, e.cameBack, e.firstOnPicture, e.handedOn})
        RC_ASSERT(share >= 0 && share <= 1);
    RC_ASSERT(reading.handedOn >= 0 && reading.handedOn <= 1);
  }));
}

// For all readers together; single readers may pass over the panel before.
TEST_CASE("adding words never shortens the page for its readers together") {
  SeenPage page = pageOfDensity(3, 2, 1.42, 4, 1.14);
  double before = eyesOn(page, 2000).ms;
  for (std::size_t panel = 0; panel < page.panels.size(); ++panel) {
    for (const int more : {1, 6, 25}) {
      page.panels[panel].elements.front().words += more;
      page.panels[panel].elements.front().characters += 4 * more;
      const double now = eyesOn(page, 2000).ms;
      CHECK(now > before);
      before = now;
    }
  }
}

TEST_CASE("five words more anywhere on any page take its readers together longer") {
  CHECK(rc::check("page's time grows", [] {
    SeenPage page = gridPage(*rc::gen::inRange(1, 4), *rc::gen::inRange(1, 4));
    for (SeenPanel& panel : page.panels) {
      addCopy(panel, *rc::gen::inRange(1, 3), *rc::gen::inRange(1, 40));
      panel.continues = *rc::gen::arbitrary<bool>();
    }
    SeenPage longer = page;
    const auto panel = *rc::gen::inRange<std::size_t>(0, page.panels.size());
    longer.panels[panel].elements.front().words += 5;
    longer.panels[panel].elements.front().characters += *rc::gen::inRange(20, 40);
    RC_ASSERT(eyesOn(longer, 200).ms > eyesOn(page, 200).ms);
  }));
}

TEST_CASE("a first balloon does not shorten the page either") {
  SeenPage page = pageOfDensity(3, 2, 0, 0, 1.14);
  const double before = eyesOn(page, 3000).ms;
  addCopy(page.panels[3], 1, 1);
  CHECK(eyesOn(page, 3000).ms > before);
}

TEST_CASE("removing a lead that arrives at the next panel never raises handed-on") {
  SeenPage page = talkingPage();
  page.panels[0].lead = {page.panels[0].focus, {1, 0}, 1, "points"};
  SeenPage without = page;
  without.panels[0].lead = {};
  CHECK(eyesOn(page, 4000).panels[0].handedOn >= eyesOn(without, 4000).panels[0].handedOn);
}

TEST_CASE("heat holds the time of all looks and lies mostly on copy") {
  const SeenPage page = talkingPage();
  EyeOptions options;
  options.readers = 400;
  options.heatColumns = 36;
  const EyeReading reading = readEyes(page, shippedEyes(), options);
  CHECK(reading.heat.columns == 36);
  CHECK(reading.heat.rows == 54);
  const double saccades = reading.looks * shippedEyes().saccadeMs;
  const double sum = std::accumulate(reading.heat.ms.begin(), reading.heat.ms.end(), 0.0);
  CHECK(sum == doctest::Approx(reading.ms - saccades));
  double onCopy = 0;
  for (std::size_t cell = 0; cell < reading.heat.ms.size(); ++cell) {
    const Point at{(static_cast<double>(cell % 36) + 0.5) * 5,
                   (static_cast<double>(cell / 36) + 0.5) * 5};
    for (const SeenPanel& panel : page.panels)
      for (const SeenElement& e : panel.elements)
        if (e.kind == SeenKind::Copy && e.box.outset(2.5).contains(at))
          onCopy += reading.heat.ms[cell] / sum;
  }
  CHECK(onCopy > 0.7);
  CHECK(onCopy < 0.95);
}

TEST_CASE("the typical reader takes the commonest order in a middling time") {
  const EyeReading reading = eyesOn(talkingPage());
  CHECK(reading.typical.panels == std::vector<int>{0, 1, 2, 3, 4, 5});
  CHECK(reading.typical.ms > reading.quickMs);
  CHECK(reading.typical.ms < reading.slowMs);
}

TEST_CASE("the same crowd is counted the same at any number of threads") {
  const SeenPage page = talkingPage();
  EyeOptions options;
  options.readers = 700;
  options.heatColumns = 30;
  options.threads = 1;
  const EyeReading one = readEyes(page, shippedEyes(), options);
  for (const unsigned threads : {2u, 5u}) {
    options.threads = threads;
    const EyeReading other = readEyes(page, shippedEyes(), options);
    CHECK(other.ms == one.ms);
    CHECK(other.heat.ms == one.heat.ms);
    CHECK(other.typical.ms == one.typical.ms);
    CHECK(other.samples.size() == one.samples.size());
    CHECK(std::memcmp(other.panels.data(), one.panels.data(),
                      one.panels.size() * sizeof(PanelEyes)) == 0);
  }
  options.seed = 2;
  CHECK(readEyes(page, shippedEyes(), options).ms != one.ms);
}

TEST_CASE("a mirrored page is read by a crowd in a mirror") {
  SeenPage page = pageOfDensity(2, 2, 1, 6, 1);
  EyeOptions options;
  options.readers = 200;
  options.heatColumns = 18;
  const EyeReading right = readEyes(page, shippedEyes(), options);
  const EyeReading left = readEyes(mirrorOf(page), shippedEyes(), options);
  CHECK(left.ms == right.ms);
  CHECK(left.handedOn == right.handedOn);
  for (std::size_t i = 0; i < right.panels.size(); ++i) {
    CHECK(left.panels[i].dwellMs == right.panels[i].dwellMs);
    CHECK(left.panels[i].passedOver == right.panels[i].passedOver);
  }
  double apart = 0;
  for (int y = 0; y < right.heat.rows; ++y)
    for (int x = 0; x < 18; ++x)
      apart += std::abs(right.heat.ms[static_cast<std::size_t>(y * 18 + x)] -
                        left.heat.ms[static_cast<std::size_t>(y * 18 + 17 - x)]);
  CHECK(apart < 1e-9);
}

TEST_CASE("odd pages are read without harm") {
  SeenPage page = gridPage(2, 2);
  page.panels[0].outline = {};                                  // no outline at all
  page.panels[1].elements.push_back(copyAt(100, 10, 0, 0, 5));  // copy without a box
  page.panels[2].lead = {page.panels[2].focus, {0, 0}, 1, ""};
  page.panels[3].focus = {-1000, 9e9};
  SeenPage flat = gridPage(1, 2);
  flat.page = {};
  SeenPage same = gridPage(1, 1);
  same.panels.push_back(same.panels.front());  // one panel exactly on another
  for (const SeenPage& odd : {page, flat, same, gridPage(8, 8)}) {
    EyeOptions options;
    options.readers = 60;
    options.heatColumns = 10;
    const EyeReading reading = readEyes(odd, shippedEyes(), options);
    CHECK(std::isfinite(reading.ms));
    CHECK(reading.ms > 0);
    for (const PanelEyes& eyes : reading.panels) CHECK(std::isfinite(eyes.dwellDeviationMs));
  }
}

TEST_CASE("a page without panels and a crowd of nobody are read by nobody") {
  CHECK(readEyes(SeenPage{}, shippedEyes()).readers == 0);
  EyeOptions nobody;
  nobody.readers = 0;
  CHECK(readEyes(talkingPage(), shippedEyes(), nobody).panels.empty());
}

}  // namespace
}  // namespace tw
