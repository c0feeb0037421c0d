#include "read/handed_on.h"

#include <doctest/doctest.h>
#include <rapidcheck.h>

#include <numbers>

#include "geometry/polygon.h"
#include "read/rhythm.h"

namespace tw {
namespace {

constexpr auto kLeftToRight = ReadingDirection::LeftToRight;
constexpr Rect kPage{{0, 0}, {170, 260}};

Polygon box(double x, double y, double w, double h) {
  return polygonOf(Rect{{x, y}, {x + w, y + h}});
}

/// 2 × 2 panels with 4 mm gutters, in reading order.
const std::vector<Polygon> kGrid{box(10, 10, 73, 118), box(87, 10, 73, 118), box(10, 132, 73, 118),
                                 box(87, 132, 73, 118)};

Lead lead(Point from, Vector direction) {
  return {from, direction, 1, ""};
}

Arrival arrivalOf(const Lead& lead, std::size_t panel, const std::vector<Polygon>& panels,
                  const Rect& page, ReadingDirection direction) {
  return ArrivalField(panels, page, direction).of(lead, panel);
}

TEST_CASE("a lead across the gutter arrives at the next panel") {
  const Arrival a = arrivalOf(lead({60, 60}, {1, 0}), 0, kGrid, kPage, kLeftToRight);
  CHECK(a.next == doctest::Approx(1));
  CHECK(a.other == 0);
  CHECK(a.off == 0);
}

TEST_CASE("a lead off the page leaks there") {
  const Arrival a = arrivalOf(lead({60, 60}, {-1, 0}), 0, kGrid, kPage, kLeftToRight);
  CHECK(a.off == doctest::Approx(1));
  CHECK(a.towardEntry < 0);
}

TEST_CASE("a lead down from the first panel arrives at the wrong one") {
  const Arrival a = arrivalOf(lead({45, 100}, {0, 1}), 0, kGrid, kPage, kLeftToRight);
  CHECK(a.other == doctest::Approx(1));
}

TEST_CASE("the shares of a cone make a whole") {
  CHECK(rc::check("sum is one", [] {
    const double angle = *rc::gen::inRange(0, 6283) / 1000.0;
    const auto panel = *rc::gen::inRange<std::size_t>(0, 4);
    const Point from = bounds(kGrid[panel]).centre();
    const Arrival a = arrivalOf(lead(from, {std::cos(angle), std::sin(angle)}), panel, kGrid, kPage,
                                kLeftToRight);
    RC_ASSERT(std::abs(a.next + a.other + a.off - 1) < 1e-12);
  }));
}

TEST_CASE("pointing straight at the entry corner is 1, straight away −1") {
  const Point from{60, 60}, corner{87, 10};
  const Vector d = (corner - from).unit();
  CHECK(arrivalOf(lead(from, d), 0, kGrid, kPage, kLeftToRight).towardEntry == doctest::Approx(1));
  CHECK(arrivalOf(lead(from, -d), 0, kGrid, kPage, kLeftToRight).towardEntry ==
        doctest::Approx(-1));
}

TEST_CASE("the last panel hands on to the page turn") {
  const Arrival turn = arrivalOf(lead({120, 200}, {1, 1}), 3, kGrid, kPage, kLeftToRight);
  CHECK(turn.next == doctest::Approx(1));
  const Arrival back = arrivalOf(lead({120, 200}, {-1, -1}), 3, kGrid, kPage, kLeftToRight);
  CHECK(back.next == 0);
}

TEST_CASE("a lead without direction arrives nowhere") {
  const Arrival a = arrivalOf(lead({60, 60}, {0, 0}), 0, kGrid, kPage, kLeftToRight);
  CHECK(a.next == 0);
  CHECK(a.other == 0);
  CHECK(a.off == 0);
}

TEST_CASE("a ground panel does not stand between two insets on it") {
  const std::vector<Polygon> panels{box(0, 0, 170, 260), box(10, 150, 45, 40),
                                    box(100, 150, 45, 40)};
  const ArrivalField field(panels, kPage, kLeftToRight, {true, false, false});
  CHECK(field.of(lead({40, 170}, {1, 0}), 1).next > 0.6);
  // … and from the ground the first inset is met directly.
  CHECK(field.of(lead({30, 60}, {0, 1}), 0).next > 0.6);
}

TEST_CASE("a slanted neighbour is met at its outline, not at its box") {
  const Polygon slanted{{{150, 10}, {160, 10}, {160, 128}, {87, 128}}};
  // A small panel in the corner that the slant leaves free: inside the neighbour's box.
  const std::vector<Polygon> panels{box(10, 10, 73, 118), box(95, 10, 30, 30), slanted};
  const Arrival a = arrivalOf(lead({75, 25}, {1, 0}), 0, panels, kPage, kLeftToRight);
  CHECK(a.next > 0.9);
}

TEST_CASE("a mirrored page hands on alike when read the other way") {
  CHECK(rc::check("mirror", [] {
    const double angle = *rc::gen::inRange(0, 6283) / 1000.0;
    const auto panel = *rc::gen::inRange<std::size_t>(0, 4);
    std::vector<Polygon> other;
    for (const Polygon& p : kGrid) other.push_back(mirrored(p, 85));
    const Point from = bounds(kGrid[panel]).centre() + Vector{3, 5};
    const Vector d{std::cos(angle), std::sin(angle)};
    const Arrival a = arrivalOf(lead(from, d), panel, kGrid, kPage, kLeftToRight);
    const Arrival b = arrivalOf(lead({170 - from.x, from.y}, {-d.x, d.y}), panel, other, kPage,
                                ReadingDirection::RightToLeft);
    RC_ASSERT(std::abs(a.next - b.next) < 1e-9);
    RC_ASSERT(std::abs(a.off - b.off) < 1e-9);
    RC_ASSERT(std::abs(a.towardEntry - b.towardEntry) < 1e-9);
  }));
}

TEST_CASE("rhythm: all shots the same have no variety, all different have full variety") {
  using enum ShotSize;
  CHECK(rhythmOf({Medium, Medium, Medium}, {1, 1, 1}).shotVariety == 0);
  CHECK(rhythmOf({Medium, Long, CloseUp}, {1, 1, 1}).shotVariety == doctest::Approx(1));
  // Shannon's entropy of (1/2, 1/4, 1/4) is 1.5 bits; four panels can have at most 2 bits.
  CHECK(rhythmOf({Medium, Medium, Long, CloseUp}, {}).shotVariety == doctest::Approx(0.75));
}

TEST_CASE("rhythm: the longest run and the panel where it ends are found") {
  using enum ShotSize;
  const Rhythm r = rhythmOf({Long, Medium, Medium, Medium, Long, Long}, {1, 2, 3, 4, 5, 6});
  CHECK(r.longestRun == 3);
  CHECK(r.runEnds == 4);
}

TEST_CASE("rhythm: area variety is the coefficient of variation") {
  // 2, 4, 4, 4, 5, 5, 7, 9: mean 5, standard deviation 2, the common textbook example.
  CHECK(rhythmOf({}, {2, 4, 4, 4, 5, 5, 7, 9}).areaVariety == doctest::Approx(0.4));
}

}  // namespace
}  // namespace tw
