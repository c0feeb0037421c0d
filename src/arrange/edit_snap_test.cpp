#include "arrange/edit_snap.h"

#include <doctest/doctest.h>

#include "arrange/edit_page_test.h"

namespace tw {
namespace {

const SnapPaper kPaper{{{10, 10}, {150, 230}}, {{0, 0}, {160, 240}}, {{-3, -3}, {163, 243}}};

TEST_CASE("a border rests on the nearest of live area and trim and bleed") {
  const std::vector<EditPanel> page{box(20, 20, 100, 100)};
  const auto left = [&](double by) { return snapped(page, {{0, 3}}, {by, 0}, {1, 0}, kPaper, 2); };
  CHECK(left(-9).offset.x == -10);
  CHECK(left(-9).lines.at(0).to == SnapTo::Live);
  CHECK(left(-19.2).lines.at(0).to == SnapTo::Trim);
  CHECK(left(-22.6).lines.at(0).to == SnapTo::Bleed);
  CHECK(left(-5).lines.empty());
  CHECK(left(-5).offset.x == -5);
}

TEST_CASE("left borders line up with left borders and not with right ones") {
  const std::vector<EditPanel> page{box(20, 20, 60, 60), box(40, 100, 80, 140)};
  const auto to = [&](double by) { return snapped(page, {{1, 3}}, {by, 0}, {1, 0}, kPaper, 2); };
  CHECK(to(-19).offset.x == -20);
  CHECK(to(-19).lines.at(0).to == SnapTo::Border);
  CHECK(to(19).lines.empty());
}

TEST_CASE("no tolerance and no snapping across the way it moves") {
  const std::vector<EditPanel> page{box(20, 20, 100, 100)};
  CHECK(snapped(page, {{0, 3}}, {-9.9, 0}, {1, 0}, kPaper, 0).offset.x == -9.9);
  CHECK(snapped(page, {{0, 0}, {0, 3}}, {-9.9, -9.9}, {1, 0}, kPaper, 2).offset ==
        Vector{-10, -9.9});
}

}  // namespace
}  // namespace tw
