#include "review/costs.h"

#include <doctest/doctest.h>
#include <rapidcheck.h>

namespace tw {

TEST_CASE("what is as asked costs nothing") {
  CHECK(cost::areaFollowsWeight(0.25, 0.25) == 0);
  CHECK(cost::panelShape(1.6, 1.6) == 0);
  CHECK(cost::panelShape(3, 0) == 0);
  CHECK(cost::shortfall(8, 8) == 0);
  CHECK(cost::readingOrder(0.95) == 0);
  CHECK(cost::focusProminent(1, 1) == 0);
  CHECK(cost::handedOn(1, 1) == 0);
  CHECK(cost::leaksOff(0.5, 0) == 0);
  CHECK(cost::rhythm(1, 1) == 0);
  CHECK(cost::stepsOffCustom(1) == 0);
}

TEST_CASE("a shot nobody asked for may be off by one step, and costs half of one that was") {
  CHECK(cost::stepsOffCustom(3) == doctest::Approx(1));
  CHECK(cost::stepsOff(3) == doctest::Approx(3));
}

TEST_CASE("half and double the area asked cost the same") {
  CHECK(cost::areaFollowsWeight(0.1, 0.2) == doctest::Approx(1));
  CHECK(cost::areaFollowsWeight(0.4, 0.2) == doctest::Approx(1));
}

TEST_CASE("more of what is wanted never costs more") {
  CHECK(rc::check("monotone", [] {
    const double less = *rc::gen::inRange(0, 1000) / 1000.0;
    const double more = less + *rc::gen::inRange(0, 1000) / 1000.0;
    RC_ASSERT(cost::shortfall(more, 1.3) <= cost::shortfall(less, 1.3));
    RC_ASSERT(cost::readingOrder(more) <= cost::readingOrder(less));
    RC_ASSERT(cost::focusProminent(more, 1) <= cost::focusProminent(less, 1));
    RC_ASSERT(cost::poseReads(more) <= cost::poseReads(less));
    RC_ASSERT(cost::handedOn(more, 1) <= cost::handedOn(less, 1));
    RC_ASSERT(cost::rhythm(3, more) <= cost::rhythm(3, less));
  }));
}

TEST_CASE("crossing the axis costs, staying or going through a neutral view does not") {
  CHECK(cost::axisKept(1, -1) == 1);
  CHECK(cost::axisKept(1, 1) == 0);
  CHECK(cost::axisKept(1, 0) == 0);
}

}  // namespace tw
