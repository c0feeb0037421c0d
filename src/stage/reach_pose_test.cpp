#include "stage/reach_pose.h"

#include <doctest/doctest.h>
#include <rapidcheck.h>

#include <cmath>
#include <cstdlib>

#include "stage/balance.h"
#include "stage/reach_problem.h"
#include "stage/shipped_presets.h"

namespace tw {
namespace {

const Body& someone() {
  static const Body body = [] {
    Character c;
    c.id = "someone";
    return bodyOf(c);
  }();
  return body;
}

double anyOf(double least, double most) {
  return least + (most - least) * *rc::gen::inRange(0, 10001) / 10000.0;
}

SetFigure anywhere() {
  SetFigure set;
  set.at = {anyOf(-2, 2), 0, anyOf(-2, 2)};
  set.headingDeg = anyOf(-180, 180);
  set.poseMirrored = *rc::gen::arbitrary<bool>();
  return set;
}

ReachedPose reach(const Pose& pose, const SetFigure& set, ReachWish wish) {
  return reachPose(someone(), pose, set, wish, shippedLimits());
}

const Pose& anyPose() {
  static const std::vector<std::string> names{"stand", "contrapposto", "hold", "point",
                                              "kneel", "pull",         "walk", "sit-chair"};
  return shippedPoses().orStand(*rc::gen::elementOf(names));
}

/// The arm of the pose laid anyhow within its published limits, the rest as it is: by forward
/// kinematics its hand is where a hand can be.
Pose withArmAnyhow(Pose pose, bool left) {
  const std::string side = left ? "left " : "right ";
  pose.turnsDeg[side + "shoulder"] = {anyOf(-30, 150), anyOf(-10, 90), anyOf(-50, 50)};
  pose.turnsDeg[side + "elbow"] = {anyOf(5, 130), 0, anyOf(-60, 60)};
  return pose;
}

}  // namespace

// Checked against forward kinematics, which has its own tests.
TEST_CASE("the slopes of a reach are those of its cost") {
  const Pose& pose = shippedPoses().orStand("contrapposto");
  SetFigure set;
  set.headingDeg = 37;
  set.gazeDeg = 12;
  ReachWish wish{{{MovedPart::LeftHand, {0.6, 1.4, -0.4}},
                  {MovedPart::RightFoot, {-0.3, 0.2, 0.1}},
                  {MovedPart::Gaze, {1, 2, -1}}},
                 {Joint::RightWrist}};
  ReachProblem problem(someone(), pose, set, wish, shippedLimits());
  std::vector<double> x(problem.size()), slope(problem.size());
  for (std::size_t i = 0; i < x.size(); ++i) x[i] = 0.3 * std::sin(1.7 * double(i));
  problem.cost(x.data(), slope.data());
  for (std::size_t i = 0; i < x.size(); ++i) {
    const double at = x[i], step = 1e-5;
    x[i] = at + step;
    const double more = problem.cost(x.data(), nullptr);
    x[i] = at - step;
    const double less = problem.cost(x.data(), nullptr);
    x[i] = at;
    INFO("way " << i);
    CHECK(slope[i] == doctest::Approx((more - less) / (2 * step)).epsilon(0.002));
  }
}

TEST_CASE("a hand goes to within 1 mm of any place that a hand can be, and the feet stay") {
  CHECK(rc::check("reach what forward kinematics reaches", [] {
    const SetFigure set = anywhere();
    const bool left = *rc::gen::arbitrary<bool>();
    const Pose& pose = anyPose();
    const MovedPart hand = left != set.poseMirrored ? MovedPart::LeftHand : MovedPart::RightHand;
    const Vec3 to = placeOf(hand, someone(), posed(someone(), withArmAnyhow(pose, left), set));
    const Skeleton before = posed(someone(), pose, set);
    RC_PRE(to.y() > 0.05);
    const ReachedPose r = reach(pose, set, {{{hand, to}}, {}});
    RC_LOG() << pose.name << " evaluations " << r.evaluations << " short " << r.shortfall();
    RC_ASSERT(r.reached[0].shortM < 0.001);
    RC_ASSERT(beyondReach(r.pose, shippedLimits()).empty());
    const Skeleton after = posed(someone(), r.pose, r.set);
    const auto was = contactsOf(someone(), before), is = contactsOf(someone(), after);
    for (const std::size_t k : {1u, 4u})  // the balls of the feet
      if (touches(was[k], 0)) RC_ASSERT((was[k].at - is[k].at).norm() < 0.001);
  }));
}

TEST_CASE("pinned joints move less than 1 mm, also when the target is out of reach") {
  CHECK(rc::check("pins stay", [] {
    const SetFigure set = anywhere();
    const Pose& pose = anyPose();
    const Skeleton s = posed(someone(), pose, set);
    const Vec3 to = s[Joint::Chest] + Vec3(anyOf(-1, 1), anyOf(-0.5, 1.2), anyOf(-1, 1));
    const ReachedPose r =
        reach(pose, set, {{{MovedPart::LeftHand, to}}, {Joint::RightWrist, Joint::LeftAnkle}});
    RC_ASSERT(r.pinsMovedM < 0.001);
    RC_ASSERT(beyondReach(r.pose, shippedLimits()).empty());
  }));
}

TEST_CASE("a mirrored wish has the mirrored answer") {
  CHECK(rc::check("looking-glass", [] {
    SetFigure set = anywhere();
    const Pose& pose = anyPose();
    const Skeleton s = posed(someone(), pose, set);
    const Vec3 to = s[Joint::Chest] + Vec3(anyOf(-.5, .5), anyOf(-.2, .6), anyOf(-.5, .5));
    const ReachedPose plain = reach(pose, set, {{{MovedPart::LeftHand, to}}, {}});
    set.at.x = -set.at.x;
    set.headingDeg = -set.headingDeg;
    set.poseMirrored = !set.poseMirrored;
    const ReachedPose glass =
        reach(pose, set, {{{MovedPart::RightHand, {-to.x(), to.y(), to.z()}}}, {}});
    RC_ASSERT(glass.pose.turnsDeg == plain.pose.turnsDeg);
    RC_ASSERT(glass.set.at.x == -plain.set.at.x);
  }));
}

TEST_CASE("what is out of reach stretches the arm toward it and says how far short") {
  const SetFigure set;
  const Pose& pose = shippedPoses().orStand("stand");
  const Skeleton s = posed(someone(), pose, set);
  const Vec3 to = s[Joint::LeftShoulder] + Vec3(4, 1, -3);
  const ReachedPose r = reach(pose, set, {{{MovedPart::LeftHand, to}}, {}});
  const Skeleton after = posed(someone(), r.pose, r.set);
  CHECK(r.reached[0].shortM > 3);
  CHECK(r.shortfall().find("left hand") == 0);
  CHECK(r.shortfall().find("cm short") != std::string::npos);
  const Vec3 arm = (after[Joint::LeftWrist] - after[Joint::LeftShoulder]);
  CHECK(arm.norm() > 0.99 * (someone().upperArm + someone().forearm));
  CHECK(arm.normalized().dot((to - after[Joint::LeftShoulder]).normalized()) > 0.97);
}

TEST_CASE("a drag of 2 cm changes the pose a little and always in the same way") {
  const SetFigure set;
  const Pose& pose = shippedPoses().orStand("stand");
  const Vec3 from = placeOf(MovedPart::LeftHand, someone(), posed(someone(), pose, set));
  const ReachWish wish{{{MovedPart::LeftHand, from + Vec3(0, 0.02, 0)}}, {}};
  const ReachedPose once = reach(pose, set, wish), again = reach(pose, set, wish);
  CHECK(once.pose.turnsDeg == again.pose.turnsDeg);
  CHECK(once.reached[0].shortM < 0.001);
  for (const auto& [joint, turn] : turnsThatDiffer(pose, once.pose)) {
    INFO(joint);
    const auto was = pose.turnsDeg.find(joint);
    for (std::size_t i = 0; i < 3 && was != pose.turnsDeg.end(); ++i)
      CHECK(std::abs(turn[i] - was->second[i]) < 8);
  }
}

TEST_CASE("hips, feet, head and gaze go where they are sent") {
  SetFigure set;
  set.headingDeg = 25;
  const Pose& pose = shippedPoses().orStand("stand");
  const Skeleton s = posed(someone(), pose, set);
  const auto sent = [&](MovedPart part, const Vec3& by) {
    return reach(pose, set, {{{part, placeOf(part, someone(), s) + by}}, {}});
  };
  CHECK(sent(MovedPart::Pelvis, {0.05, -0.12, 0}).reached[0].shortM < 0.001);
  CHECK(sent(MovedPart::RightFoot, {-0.2, 0.25, -0.1}).reached[0].shortM < 0.001);
  CHECK(sent(MovedPart::LeftFoot, {0.25, 0, 0}).reached[0].shortM < 0.001);
  CHECK(sent(MovedPart::Head, {0.06, -0.05, -0.08}).reached[0].shortM < 0.001);
  CHECK(sent(MovedPart::Gaze, {0.5, 0.2, 0}).reached[0].shortM < 0.03);
}

TEST_CASE("turns that were changed in a rough are the pose's own in every way") {
  const Pose& pose = shippedPoses().orStand("stand");
  SetFigure set;
  set.poseMirrored = true;
  const Vec3 to(-0.4, 1.5, -0.3);
  const ReachedPose r = reach(pose, set, {{{MovedPart::RightHand, to}}, {}});
  SetFigure changed = r.set;
  changed.turnsDeg = turnsThatDiffer(pose, r.pose);
  const Skeleton a = posed(someone(), r.pose, r.set), b = posed(someone(), pose, changed);
  for (std::size_t j = 0; j < kJoints; ++j) CHECK((a.at[j] - b.at[j]).norm() < 1e-4);
  changed.turnsDeg["no such joint"] = {90, 0, 0};
  CHECK((posed(someone(), pose, changed)[Joint::LeftWrist] - b[Joint::LeftWrist]).norm() == 0);
}

}  // namespace tw
