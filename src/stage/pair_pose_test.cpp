#include "stage/pair_pose.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <cstdlib>

#include "stage/joint_limits.h"
#include "stage/shipped_presets.h"
#include "stage/staging.h"

namespace tw {
namespace {

Character person(const std::string& id, Sex sex, double height, const std::string& build,
                 double years = 0) {
  Character c;
  c.id = id;
  c.name = id;
  c.sex = sex;
  c.heightM = height;
  c.build = build;
  c.ageYears = years;
  return c;
}

std::vector<Character> people() {
  return {person("teo", Sex::Male, 1.80, "medium"),     person("ines", Sex::Female, 1.62, "slight"),
          person("odo", Sex::Male, 1.72, "heavy"),      person("vera", Sex::Female, 1.90, "heroic"),
          person("kit", Sex::Female, 1.00, "child", 4), person("jon", Sex::Male, 1.28, "child", 8)};
}

bool suits(const PairPose& pair, const Body& first, const Body& second) {
  const double share = second.stature / first.stature;
  return share >= pair.leastShare && share <= pair.mostShare;
}

Beat carrying(const std::string& who, const std::string& whom) {
  Beat beat;
  beat.id = "p1-1";
  beat.description = "One carries the other.";
  beat.setting = "exterior";
  beat.figures = {{who, "carry", "carries", whom}, {whom, "lie", "", ""}};
  return beat;
}

const PairPose* pairNamed(const std::string& name) {
  const auto& all = shippedPoses().pairs();
  const auto found =
      std::find_if(all.begin(), all.end(), [&](const PairPose& p) { return p.name == name; });
  return found == all.end() ? nullptr : &*found;
}

}  // namespace

TEST_CASE("the poses for two that scripts ask for all ship with the program") {
  for (const char* name : {"carry", "cradle-child", "embrace", "grapple", "shield", "hand-over",
                           "lead", "back-to-back", "help-up", "support", "comfort"}) {
    INFO(name);
    CHECK(pairNamed(name) != nullptr);
  }
}

TEST_CASE("hands meet what they are laid on, whatever the two bodies' sizes") {
  for (const PairPose& pair : shippedPoses().pairs())
    for (const Character& a : people())
      for (const Character& b : people()) {
        const Body first = bodyOf(a), second = bodyOf(b);
        const bool grownUps = a.ageYears == 0 && b.ageYears == 0;
        const bool alike = std::abs(first.stature - second.stature) < 0.55;
        if (a.id == b.id || !suits(pair, first, second) || a.ageYears > 0) continue;
        if (!grownUps && !alike && pair.mostShare > 1) continue;  // a toddler wrestles nobody
        const auto sets = paired(pair, first, second, SetFigure{});
        double widest = 0;
        for (const double gap : contactGaps(pair, first, second, sets))
          widest = std::max(widest, gap);
        INFO(pair.name << ": " << a.id << " and " << b.id);
        CHECK(widest < 0.02);
      }
}

TEST_CASE("poses for two stay within what joints can do") {
  const auto limits = JointLimits::load();
  REQUIRE(limits.has_value());
  const Body first = bodyOf(people()[0]), grownUp = bodyOf(people()[1]),
             child = bodyOf(people()[4]);
  for (const PairPose& pair : shippedPoses().pairs()) {
    const auto sets = paired(pair, first, pair.mostShare < 0.9 ? child : grownUp, SetFigure{});
    for (std::size_t i = 0; i < 2; ++i)
      for (const std::string& joint :
           beyondReach(withTurns(pair.poses[i], sets[i].turnsDeg), *limits))
        FAIL_CHECK(pair.name << ", " << pair.roles[i] << ": " << joint);
  }
}

TEST_CASE("turning the first turns the pair as a whole") {
  const Body a = bodyOf(people()[0]), b = bodyOf(people()[1]);
  for (const PairPose& pair : shippedPoses().pairs()) {
    SetFigure start, turned;
    turned.headingDeg = 90;
    turned.at = {2, 0, 1};
    const auto s = paired(pair, a, b, start), t = paired(pair, a, b, turned);
    INFO(pair.name);
    const Place3 d = s[1].at, e = t[1].at;
    CHECK(e.y == doctest::Approx(d.y).epsilon(1e-6));
    CHECK(std::hypot(e.x - 2, e.z - 1) == doctest::Approx(std::hypot(d.x, d.z)).epsilon(1e-6));
  }
}

TEST_CASE("the relation in a beat and the sizes of the two choose the pose for two") {
  const auto chosen = [&](const Beat& beat, double secondM) {
    const auto found = pairIn(beat, 0, shippedPoses(),
                              {{beat.figures[0].who, 1.8}, {beat.figures[1].who, secondM}});
    return found ? found->pair->name : std::string();
  };
  CHECK(chosen(carrying("teo", "ines"), 1.62) == "carry");
  CHECK(chosen(carrying("teo", "kit"), 1.0) == "cradle-child");
  Beat apart = carrying("teo", "ines");
  apart.figures[0].relation = "looks at";
  CHECK(chosen(apart, 1.62).empty());
  apart.description = "They stand BACK to back.";
  CHECK(chosen(apart, 1.62) == "back-to-back");
}

TEST_CASE("in a panel where one carries the other, one body is carried") {
  const auto stager = Stager::make(people());
  REQUIRE(stager.has_value());
  const Beat beat = carrying("teo", "ines");
  StageRequest request;
  request.beat = &beat;
  for (const bool mirrored : {false, true}) {
    StagingChoice choice;
    choice.shot = ShotSize::Long;
    choice.mirrored = mirrored;
    const Staging staging = stager->solved(request, choice);
    REQUIRE(staging.figures.size() == 2);
    CHECK(staging.figures[0].pose == "carry:bearer");
    CHECK(staging.figures[1].pose == "carry:carried");
    CHECK(staging.figures[1].at.y > 0.6);
    const Place3 a = staging.figures[0].at, b = staging.figures[1].at;
    CHECK(std::hypot(a.x - b.x, a.z - b.z) < 0.7);
  }
}

}  // namespace tw
