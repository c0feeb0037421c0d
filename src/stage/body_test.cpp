#include <doctest/doctest.h>

#include "stage/figure.h"

namespace tw {
namespace {

Character person(Sex sex, double height, const std::string& build = "medium") {
  Character c;
  c.id = "someone";
  c.sex = sex;
  c.heightM = height;
  c.build = build;
  return c;
}

}  // namespace

// Drillis & Contini 1966 as in Winter 2009, Fig. 4.1.
TEST_CASE("an adult's lengths are Drillis and Contini's shares of stature") {
  for (const Sex sex : {Sex::Female, Sex::Male})
    for (const char* build : {"slight", "medium", "heavy"}) {
      const Body b = bodyOf(person(sex, 1.7, build));
      const double h = 1.7;
      CHECK(b.headHeight == doctest::Approx(0.130 * h).epsilon(1e-12));
      CHECK(b.neck == doctest::Approx(0.052 * h).epsilon(1e-12));
      CHECK(b.shoulderToHip == doctest::Approx(0.288 * h).epsilon(1e-12));
      CHECK(b.upperArm == doctest::Approx(0.186 * h).epsilon(1e-12));
      CHECK(b.forearm == doctest::Approx(0.146 * h).epsilon(1e-12));
      CHECK(b.hand == doctest::Approx(0.108 * h).epsilon(1e-12));
      CHECK(b.thigh == doctest::Approx(0.245 * h).epsilon(1e-12));
      CHECK(b.shank == doctest::Approx(0.246 * h).epsilon(1e-12));
      CHECK(b.ankleHeight == doctest::Approx(0.039 * h).epsilon(1e-12));
      CHECK(b.footLength == doctest::Approx(0.152 * h).epsilon(1e-12));
    }
}

TEST_CASE("the lengths from sole to crown add up to the stature for every build") {
  for (const char* build : {"slight", "medium", "heavy", "heroic", "child"}) {
    const Body b = bodyOf(person(Sex::Male, 1.3, build));
    const double sum = b.ankleHeight + b.shank + b.thigh + b.shoulderToHip + b.neck + b.headHeight;
    CHECK(sum == doctest::Approx(1.3).epsilon(1e-9));
  }
}

// ANSUR II 2012, means of value over stature.
TEST_CASE("a medium adult's breadths are ANSUR II's for the sex") {
  const Body m = bodyOf(person(Sex::Male, 1.0)), f = bodyOf(person(Sex::Female, 1.0));
  CHECK(m.shoulderBreadth == doctest::Approx(0.2368));
  CHECK(f.shoulderBreadth == doctest::Approx(0.2244));
  CHECK(m.hipBreadth == doctest::Approx(0.1970));
  CHECK(f.hipBreadth == doctest::Approx(0.2174));
  CHECK(m.chestDepth == doctest::Approx(0.1446));
  CHECK(f.chestDepth == doctest::Approx(0.1520));
  CHECK(m.waistBreadth == doctest::Approx(0.1860));
  CHECK(m.headBreadth == doctest::Approx(0.0880));
  CHECK(f.headDepth == doctest::Approx(0.1167));
}

// Head counts: US Navy NAVEDTRA 14262 p. 3-34 for children (ages by stature from memory);
// 8½ heads for heroic figures is common practice.
TEST_CASE("children have fewer heads to their height and heroes more") {
  const auto heads = [](const Body& b) { return b.stature / b.headHeight; };
  CHECK(heads(bodyOf(person(Sex::Female, 0.75, "child"))) == doctest::Approx(4.5));
  CHECK(heads(bodyOf(person(Sex::Female, 1.28, "child"))) == doctest::Approx(6.25));
  CHECK(heads(bodyOf(person(Sex::Female, 1.50, "child"))) == doctest::Approx(7.0));
  CHECK(heads(bodyOf(person(Sex::Male, 1.9, "heroic"))) == doctest::Approx(8.5));
}

// Head counts at 1, 8 and 12 years: the same page of NAVEDTRA 14262; ideal 8: common practice.
TEST_CASE("a stated age sets a child's head count, a stated count everybody's") {
  const auto heads = [](Character c, double years, double count) {
    c.ageYears = years;
    c.heads = count;
    const Body b = bodyOf(c);
    return b.stature / b.headHeight;
  };
  const Character child = person(Sex::Male, 1.3, "child");
  CHECK(heads(child, 1, 0) == doctest::Approx(4.5));
  CHECK(heads(child, 8, 0) == doctest::Approx(6.25));
  CHECK(heads(child, 12, 0) == doctest::Approx(7.0));
  CHECK(heads(child, 8, 6) == doctest::Approx(6.0));
  CHECK(heads(person(Sex::Female, 1.7, "ideal"), 0, 0) == doctest::Approx(8));
  CHECK(heads(person(Sex::Female, 1.7), 40, 0) == doctest::Approx(1 / 0.130));
}

TEST_CASE("age bends the back and brings the head forward and down") {
  Character c = person(Sex::Female, 1.6);
  c.ageYears = 50;
  CHECK(bodyOf(c).stoopDeg == 0);
  const Pose upright;
  const Skeleton before = posed(bodyOf(c), upright, SetFigure{});
  c.ageYears = 80;
  const Skeleton after = posed(bodyOf(c), upright, SetFigure{});
  CHECK(after[Joint::Crown].y() < before[Joint::Crown].y() - 0.002);
  CHECK(after[Joint::Nose].z() < before[Joint::Nose].z() - 0.02);  // −z is the front
}

TEST_CASE("a build that is not known counts as medium") {
  CHECK(bodyOf(person(Sex::Male, 1.8, "enormous")).hipBreadth ==
        bodyOf(person(Sex::Male, 1.8)).hipBreadth);
}

}  // namespace tw
