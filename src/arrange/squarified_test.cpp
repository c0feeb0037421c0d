// The worked example of Bruls, Huizing, van Wijk, Squarified treemaps, Data Visualization 2000,
// 33–42, doi:10.1007/978-3-7091-6783-0_4: areas 6, 6, 4, 3, 2, 2, 1 in a box 6 wide and 4 high.
// Their algorithm is written out here in exact fractions, and our sizing of the tree that it ends
// in must give the same rectangles.
#include <doctest/doctest.h>

#include <cstdint>
#include <numeric>
#include <vector>

#include "arrange/layout.h"

namespace tw {
namespace {

struct Fraction {
  std::int64_t top = 0, bottom = 1;

  Fraction(std::int64_t t, std::int64_t b = 1) {
    const std::int64_t g = std::gcd(t, b) * (b < 0 ? -1 : 1);
    top = t / g;
    bottom = b / g;
  }
  Fraction operator+(Fraction o) const {
    return {top * o.bottom + o.top * bottom, bottom * o.bottom};
  }
  Fraction operator-(Fraction o) const {
    return {top * o.bottom - o.top * bottom, bottom * o.bottom};
  }
  Fraction operator*(Fraction o) const { return {top * o.top, bottom * o.bottom}; }
  Fraction operator/(Fraction o) const { return {top * o.bottom, bottom * o.top}; }
  bool operator<(Fraction o) const { return top * o.bottom < o.top * bottom; }
  bool operator==(const Fraction&) const = default;
  double value() const { return static_cast<double>(top) / static_cast<double>(bottom); }
};

struct Box {
  Fraction x, y, w, h;
  bool operator==(const Box&) const = default;
};

class Squarified {
 public:
  Squarified(std::vector<Fraction> areas, Box free) : areas_(std::move(areas)), free_(free) {
    std::size_t first = 0;
    while (first < areas_.size()) {
      std::size_t last = first + 1;
      Fraction worst = tryRow(first, last);
      while (last < areas_.size()) {
        const Fraction next = tryRow(first, last + 1);
        if (worst < next) break;
        worst = next;
        ++last;
      }
      layRow(first, last);
      first = last;
    }
  }

  std::vector<Box> boxes;
  std::vector<Fraction> trials;  ///< worst aspect of each row that was tried, in order

 private:
  bool isColumn() const { return !(free_.w < free_.h); }
  Fraction side() const { return isColumn() ? free_.h : free_.w; }

  Fraction sum(std::size_t first, std::size_t last) const {
    Fraction total = 0;
    for (std::size_t i = first; i < last; ++i) total = total + areas_[i];
    return total;
  }

  /// max(s²·r_max / Σ², Σ² / (s²·r_min)); areas come largest first.
  Fraction tryRow(std::size_t first, std::size_t last) {
    const Fraction total = sum(first, last), s = side();
    const Fraction wide = s * s * areas_[first] / (total * total);
    const Fraction thin = total * total / (s * s * areas_[last - 1]);
    trials.push_back(wide < thin ? thin : wide);
    return trials.back();
  }

  void layRow(std::size_t first, std::size_t last) {
    const Fraction thickness = sum(first, last) / side();
    Fraction x = free_.x, y = free_.y;
    const bool column = isColumn();
    for (std::size_t i = first; i < last; ++i) {
      const Fraction length = areas_[i] / thickness;
      boxes.push_back(column ? Box{x, y, thickness, length} : Box{x, y, length, thickness});
      if (column)
        y = y + length;
      else
        x = x + length;
    }
    if (column)
      free_ = {free_.x + thickness, free_.y, free_.w - thickness, free_.h};
    else
      free_ = {free_.x, free_.y + thickness, free_.w, free_.h - thickness};
  }

  std::vector<Fraction> areas_;
  Box free_;
};

using F = Fraction;
const std::vector<Fraction> kAreas{6, 6, 4, 3, 2, 2, 1};
const std::vector<Box> kPublished{{0, 0, 3, 2},
                                  {0, 2, 3, 2},
                                  {3, 0, F(12, 7), F(7, 3)},
                                  {F(33, 7), 0, F(9, 7), F(7, 3)},
                                  {3, F(7, 3), F(6, 5), F(5, 3)},
                                  {F(21, 5), F(7, 3), F(6, 5), F(5, 3)},
                                  {F(27, 5), F(7, 3), F(3, 5), F(5, 3)}};

TEST_CASE("the squarified worked example comes out in exact fractions") {
  const Squarified map(kAreas, {0, 0, 6, 4});
  CHECK(map.boxes == kPublished);
  const std::vector<Fraction> trials{F(8, 3),   F(3, 2),   4,         F(9, 4),   F(49, 27), F(9, 2),
                                     F(25, 18), F(72, 25), F(25, 18), F(81, 25), F(25, 9)};
  CHECK(map.trials == trials);
}

TEST_CASE("sizing the tree of the squarified example gives its rectangles") {
  const TreeNode leaf;
  const TreeNode left{false, {leaf, leaf}}, upper{true, {leaf, leaf}};
  const TreeNode lower{true, {leaf, leaf, leaf}};
  const TreeNode tree{true, {left, TreeNode{false, {upper, lower}}}};
  std::vector<PanelWish> wishes;
  for (const Fraction area : kAreas) wishes.push_back({area.value(), 0, 0, 0});
  const std::vector<Rect> boxes =
      sizeTree(tree, {{0, 0}, {6, 4}}, wishes, 0, 0, ReadingDirection::LeftToRight);
  for (std::size_t i = 0; i < boxes.size(); ++i) {
    CHECK(boxes[i].min.x == doctest::Approx(kPublished[i].x.value()).epsilon(1e-12));
    CHECK(boxes[i].min.y == doctest::Approx(kPublished[i].y.value()).epsilon(1e-12));
    CHECK(boxes[i].width() == doctest::Approx(kPublished[i].w.value()).epsilon(1e-12));
    CHECK(boxes[i].height() == doctest::Approx(kPublished[i].h.value()).epsilon(1e-12));
  }
}

}  // namespace
}  // namespace tw
