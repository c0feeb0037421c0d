// Laws of a distribution over readers; the crowd is the independent count that the exact shares
// must agree with (sampling error: binomial, four and a half standard deviations).
#include "read/page_reading.h"

#include <doctest/doctest.h>
#include <rapidcheck.h>

#include <algorithm>
#include <cmath>

#include "geometry/polygon.h"

namespace tw {
namespace {

constexpr auto kLeftToRight = ReadingDirection::LeftToRight;
constexpr auto kRightToLeft = ReadingDirection::RightToLeft;

Polygon box(double x, double y, double w, double h) {
  return polygonOf(Rect{{x, y}, {x + w, y + h}});
}

std::vector<Polygon> grid(int rows, int columns) {
  std::vector<Polygon> panels;
  for (int r = 0; r < rows; ++r)
    for (int c = 0; c < columns; ++c) panels.push_back(box(c * 54, r * 64, 50, 60));
  return panels;
}

/// Six panels, of which a stack stands beside a tall one.
std::vector<Polygon> doubtfulPage() {
  return {box(0, 0, 50, 60),   box(0, 64, 50, 60),   box(54, 0, 50, 124),
          box(0, 128, 30, 60), box(34, 128, 30, 60), box(68, 128, 36, 60)};
}

std::vector<Polygon> wildPage() {
  std::vector<Polygon> panels;
  const int n = *rc::gen::inRange(1, 8);
  for (int i = 0; i < n; ++i)
    panels.push_back(box(*rc::gen::inRange(0, 150), *rc::gen::inRange(0, 200),
                         *rc::gen::inRange(5, 90), *rc::gen::inRange(5, 90)));
  return panels;
}

double shareOf(const PageReading& reading, int from, int to) {
  for (const Move& move : reading.moves)
    if (move.from == from && move.to == to) return move.share;
  return 0;
}

TEST_CASE("a stack beside a tall panel parts readers at its first panel") {
  const PageReading reading = readPage(doubtfulPage(), kLeftToRight);
  CHECK(reading.order == std::vector<int>{0, 1, 2, 3, 4, 5});
  CHECK(shareOf(reading, 0, 1) > 0.62);  // Cohn 2013, author's account: 62 to 68 % down
  CHECK(shareOf(reading, 0, 1) < 0.68);
  CHECK(shareOf(reading, 0, 2) > 0.27);  // 31 to 32 % across
  CHECK(shareOf(reading, 0, 2) < 0.36);
  for (const Move& move : reading.moves)
    if (move.from == 0) {
      if (move.to <= 2) CHECK(move.cause == "stack beside a tall panel");
      CHECK(move.share >= kRareMove);
    }
}

TEST_CASE("moves stand by the order of reading and then by falling share") {
  const PageReading reading = readPage(doubtfulPage(), kLeftToRight);
  CHECK(reading.moves.front().from == -1);
  std::vector<int> froms;
  for (std::size_t i = 0; i < reading.moves.size(); ++i) {
    const Move& move = reading.moves[i];
    if (froms.empty() || froms.back() != move.from)
      froms.push_back(move.from);
    else
      CHECK(reading.moves[i - 1].share >= move.share);
  }
  CHECK(froms.size() <= 7);
  for (std::size_t i = 1; i < froms.size(); ++i) CHECK(froms[i] == reading.order[i - 1]);
}

TEST_CASE("at every panel the readers who stand there go somewhere or have finished") {
  CHECK(rc::check("shares stay within one", [] {
    const PageReading reading = readPage(wildPage(), kLeftToRight);
    std::vector<double> sums(10);
    for (const Move& move : reading.moves) sums[move.from + 1] += move.share;
    for (const double sum : sums) RC_ASSERT(sum < 1 + 1e-9);
    RC_ASSERT(sums[0] > 0.9);  // all enter; rare entries are not told
    RC_ASSERT(reading.lost < 1e-3);
  }));
}

TEST_CASE("the order that panels are given in does not matter") {
  CHECK(rc::check("shuffled", [] {
    const std::vector<Polygon> panels = wildPage();
    const int turn = *rc::gen::inRange(0, static_cast<int>(panels.size()));
    std::vector<Polygon> turned = panels;
    std::rotate(turned.begin(), turned.begin() + turn, turned.end());
    const PageReading a = readPage(panels, kLeftToRight), b = readPage(turned, kLeftToRight);
    RC_ASSERT(std::abs(a.followed - b.followed) < 1e-12);
    for (std::size_t i = 0; i < a.order.size(); ++i)
      RC_ASSERT(panels[a.order[i]] == turned[b.order[i]]);
  }));
}

TEST_CASE("a mirrored page read the other way is read the same") {
  CHECK(rc::check("mirror", [] {
    const std::vector<Polygon> panels = wildPage();
    std::vector<Polygon> other;
    for (const Polygon& panel : panels) other.push_back(mirrored(panel, 77));
    const PageReading a = readPage(panels, kLeftToRight), b = readPage(other, kRightToLeft);
    RC_ASSERT(a.order == b.order);
    RC_ASSERT(a.moves.size() == b.moves.size());
    for (std::size_t i = 0; i < a.moves.size(); ++i)
      RC_ASSERT(std::abs(a.moves[i].share - b.moves[i].share) < 1e-9);
  }));
}

TEST_CASE("no whole order is taken by more readers than the likeliest") {
  CHECK(rc::check("all orders of up to five panels", [] {
    std::vector<Polygon> panels = wildPage();
    if (panels.size() > 5) panels.resize(5);
    const PageReading reading = readPage(panels, kLeftToRight);
    std::vector<int> order(panels.size());
    for (std::size_t i = 0; i < order.size(); ++i) order[i] = static_cast<int>(i);
    double sum = 0;
    do {
      const double share = followedShare(panels, kLeftToRight, order);
      RC_ASSERT(share <= reading.followed + 1e-12);
      sum += share;
    } while (std::next_permutation(order.begin(), order.end()));
    RC_ASSERT(std::abs(sum - 1) < 1e-9);  // every reader takes one of them
    RC_ASSERT(std::abs(followedShare(panels, kLeftToRight, reading.order) - reading.followed) <
              1e-12);
  }));
}

TEST_CASE("a crowd of readers goes where the exact shares say") {
  constexpr int kReaders = 40000;
  for (const auto& panels : {doubtfulPage(), grid(2, 3), grid(3, 3)}) {
    const PageReading exact = readPage(panels, kLeftToRight);
    const CrowdReading crowd = simulateReaders(panels, kLeftToRight, kReaders, 11);
    for (const Move& move : exact.moves) {
      const double counted = crowd.moves[move.from + 1][move.to] / double(kReaders);
      const double error = std::sqrt(move.share * (1 - move.share) / kReaders);
      CHECK(std::abs(counted - move.share) < 4.5 * error + 1e-6);
    }
    CHECK(crowd.orders.front() == exact.order);
    const double error = std::sqrt(exact.followed * (1 - exact.followed) / kReaders);
    CHECK(std::abs(crowd.takers.front() / double(kReaders) - exact.followed) < 4.5 * error);
  }
}

TEST_CASE("the same seed sends the crowd the same ways at any number of threads") {
  const CrowdReading one = simulateReaders(doubtfulPage(), kLeftToRight, 3000, 5, 1);
  const CrowdReading four = simulateReaders(doubtfulPage(), kLeftToRight, 3000, 5, 4);
  CHECK(one.moves == four.moves);
  CHECK(one.orders == four.orders);
  CHECK(one.takers == four.takers);
  const CrowdReading other = simulateReaders(doubtfulPage(), kLeftToRight, 3000, 6, 1);
  CHECK(one.moves != other.moves);
}

TEST_CASE("a heap of 64 panels is still read and says what was not followed") {
  std::vector<Polygon> panels;
  for (int i = 0; i < 64; ++i)
    panels.push_back(box((i * 37) % 101, (i * 53) % 151, 9 + (i * 7) % 13, 8 + (i * 11) % 17));
  const PageReading reading = readPage(panels, kLeftToRight);
  CHECK(reading.order.size() == 64);
  CHECK(reading.lost >= 0);
  CHECK(reading.lost <= 1);
}

TEST_CASE("panels that lie exactly on each other are read as they stand in the list") {
  const std::vector<Polygon> twins(5, box(3, 4, 50, 60));
  CHECK(readPage(twins, kLeftToRight).order == std::vector<int>{0, 1, 2, 3, 4});
}

TEST_CASE("crossing slanted and ragged outlines each give every panel once") {
  CHECK(rc::check("any polygons", [] {
    std::vector<Polygon> panels(*rc::gen::inRange<std::size_t>(1, 7));
    for (Polygon& panel : panels) {
      const int corners = *rc::gen::inRange(3, 9);
      for (int i = 0; i < corners; ++i)
        panel.points.push_back(
            {double(*rc::gen::inRange(-20, 200)), double(*rc::gen::inRange(-20, 300))});
    }
    std::vector<int> order = readPage(panels, kRightToLeft).order;
    std::sort(order.begin(), order.end());
    for (std::size_t i = 0; i < panels.size(); ++i) RC_ASSERT(order[i] == static_cast<int>(i));
  }));
}

TEST_CASE("no panels and no readers give an empty answer") {
  CHECK(readPage({}, kLeftToRight).order.empty());
  CHECK(simulateReaders({}, kLeftToRight, 10, 1).orders.empty());
  CHECK(simulateReaders(grid(2, 2), kLeftToRight, 0, 1).orders.empty());
}

}  // namespace
}  // namespace tw
