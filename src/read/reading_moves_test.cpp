#include "read/reading_moves.h"

#include <doctest/doctest.h>
#include <rapidcheck.h>

#include "read/eye_pages_test.h"

namespace tw {
namespace {

using namespace test;

PanelSet all(int count) {
  return (PanelSet{1} << count) - 1;
}

ReaderState begun(const EyePage& page, int at) {
  return after({-1, all(page.count()), 0, false, {}}, at, page.relations());
}

double shareOf(int panel, const ReaderState& state, const EyePage& page) {
  for (const MoveShare& move : movesFrom(state, page))
    if (move.panel == panel) return move.share;
  return 0;
}

/// A stack of two beside a tall panel: the published ambiguous layout.
SeenPage stackPage() {
  SeenPage page;
  page.page = kEyePage;
  page.panels = {panelAt(0, 0, 88, 133), panelAt(0, 137, 88, 133), panelAt(92, 0, 88, 270)};
  return page;
}

TEST_CASE("the shares of all moves make one") {
  CHECK(rc::check("sum is one", [] {
    SeenPage page = gridPage(*rc::gen::inRange(1, 4), *rc::gen::inRange(1, 4));
    for (SeenPanel& panel : page.panels) {
      if (*rc::gen::arbitrary<bool>()) addCopy(panel, 1, 5);
      panel.lead = {panel.focus, {1, 0.2}, *rc::gen::inRange(0, 3) / 2.0, ""};
    }
    const EyePage ready(page, shippedEyes());
    ReaderState state{-1, all(ready.count()), 0, false, {}};
    while (state.unread) {
      const std::vector<MoveShare> moves = movesFrom(state, ready);
      double sum = 0;
      for (const MoveShare& move : moves) {
        RC_ASSERT(move.share >= 0 && move.share <= 1);
        sum += move.share;
      }
      RC_ASSERT(std::abs(sum - 1) < 1e-9);
      state = after(state, moves.back().panel, ready.relations());
    }
  }));
}

// Kirtley, Murray, Vaughan, Tatler 2023: outlines decide; text changed one ambiguous layout.
TEST_CASE("copy never overrules a clear grid") {
  SeenPage page = gridPage(3, 2);
  const EyePage plain(page, shippedEyes());
  addCopy(page.panels[2], 1, 30);  // under the first panel
  const EyePage pulled(page, shippedEyes());
  CHECK(shareOf(1, begun(plain, 0), plain) == shareOf(1, begun(pulled, 0), pulled));
  CHECK(shareOf(1, begun(pulled, 0), pulled) > 0.9);
}

TEST_CASE("copy near by can settle an open fork either way") {
  const SeenPage page = stackPage();
  const EyePage plain(page, shippedEyes());
  SeenPage tall = page, under = page;
  tall.panels[2].elements.push_back(copyAt(94, 60, 30, 20, 8));
  under.panels[1].elements.push_back(copyAt(30, 139, 30, 20, 8));
  const EyePage toTall(tall, shippedEyes()), toUnder(under, shippedEyes());
  const double before = shareOf(2, begun(plain, 0), plain);
  CHECK(before > 0.27);  // Cohn 2013: about 32 %
  CHECK(before < 0.36);
  CHECK(shareOf(2, begun(toTall, 0), toTall) > before + 0.1);
  CHECK(shareOf(2, begun(toUnder, 0), toUnder) < before - 0.05);
}

TEST_CASE("copy settles less the farther it stands") {
  double before = 1;
  for (int y = 20; y <= 220; y += 40) {
    SeenPage page = stackPage();
    page.panels[2].elements.push_back(copyAt(94, y, 30, 20, 8));
    const EyePage ready(page, shippedEyes());
    const double share = shareOf(2, begun(ready, 0), ready);
    CHECK(share <= before);
    before = share;
  }
  CHECK(before < 0.4);
}

// Gaze cueing g = 0.23; that it sends readers to another panel was never measured.
TEST_CASE("a lead moves few readers") {
  SeenPage page = gridPage(3, 2);
  const EyePage plain(page, shippedEyes());
  page.panels[0].lead = {page.panels[0].focus, {0, 1}, 1, "points"};  // at the panel below
  const EyePage led(page, shippedEyes());
  const double before = shareOf(1, begun(plain, 0), plain);
  const double now = shareOf(1, begun(led, 0), led);
  CHECK(now < before);
  CHECK(now > before - 0.05);
}

TEST_CASE("a tree of moves deals out each panel once with the shares of the moves") {
  const EyePage page(stackPage(), shippedEyes());
  MoveTree tree(page);
  int tallSecond = 0, readers = 0;
  for (double draw = 0.0005; draw < 1; draw += 0.001, ++readers) {
    tree.restart();
    std::vector<int> order;
    for (int panel = tree.next(0); panel >= 0; panel = tree.next(draw)) order.push_back(panel);
    REQUIRE(order.size() == 3);
    CHECK(order[0] + order[1] + order[2] == 3);
    tallSecond += order[1] == 2;
  }
  CHECK(tallSecond / static_cast<double>(readers) ==
        doctest::Approx(shareOf(2, begun(page, 0), page)).epsilon(0.02));
}

}  // namespace
}  // namespace tw
