#include <doctest/doctest.h>
#include <rapidcheck.h>

#include <Eigen/Geometry>

#include "stage/figure.h"

namespace tw {
namespace {

Body woman() {
  Character c;
  c.id = "mara";
  c.heightM = 1.68;
  return bodyOf(c);
}

double apart(const Skeleton& s, Joint a, Joint b) {
  return (s[a] - s[b]).norm();
}

constexpr const char* kTurning[] = {"waist",        "chest",          "neck",        "head",
                                    "left girdle",  "left shoulder",  "left elbow",  "left wrist",
                                    "left hip",     "left knee",      "left ankle",  "left toes",
                                    "right girdle", "right shoulder", "right elbow", "right wrist",
                                    "right hip",    "right knee",     "right ankle", "right toes"};

Pose randomPose() {
  Pose pose;
  const auto angle = [] { return double(*rc::gen::inRange(-170, 170)); };
  for (const char* joint : kTurning) pose.turnsDeg[joint] = {angle(), angle(), angle()};
  pose.rootTurnDeg = {angle(), angle(), angle()};
  return pose;
}

SetFigure randomPlace() {
  SetFigure set;
  set.at = {double(*rc::gen::inRange(-5, 5)), double(*rc::gen::inRange(0, 3)), 2};
  set.headingDeg = *rc::gen::inRange(-180, 180);
  set.gazeDeg = *rc::gen::inRange(-80, 80);
  return set;
}

Vec3 lookingGlass(const Vec3& p) {
  return {-p.x(), p.y(), p.z()};
}

}  // namespace

// Landmark heights: Drillis & Contini 1966, Winter 2009 Fig. 4.1. The arm's landmarks are a chain,
// which differs from the figure's by up to 0.002 of stature.
TEST_CASE("an upright figure has its landmarks at Drillis and Contini's heights") {
  const Body body = woman();
  const Skeleton s = posed(body, Pose{}, SetFigure{});
  const auto height = [&](Joint j) { return s[j].y() / body.stature; };
  CHECK(height(Joint::Crown) == doctest::Approx(1.000).epsilon(1e-6));
  CHECK(height(Joint::Chin) == doctest::Approx(0.870).epsilon(1e-6));
  CHECK(height(Joint::LeftShoulder) == doctest::Approx(0.818).epsilon(1e-6));
  CHECK(height(Joint::LeftHip) == doctest::Approx(0.530).epsilon(1e-6));
  CHECK(height(Joint::LeftKnee) == doctest::Approx(0.285).epsilon(1e-6));
  CHECK(height(Joint::LeftAnkle) == doctest::Approx(0.039).epsilon(1e-6));
  CHECK(std::abs(height(Joint::LeftElbow) - 0.630) <= 0.00201);
  CHECK(std::abs(height(Joint::LeftWrist) - 0.485) <= 0.00201);
  CHECK(std::abs(height(Joint::LeftFingertip) - 0.377) <= 0.00201);
}

TEST_CASE("heading 0 faces the default camera with the left hand at +x and 90 turns to +x") {
  const Body body = woman();
  SetFigure set;
  Skeleton s = posed(body, Pose{}, set);
  CHECK(s[Joint::Nose].z() < s[Joint::Head].z() - 0.05);
  CHECK(s[Joint::LeftWrist].x() > 0.1);
  set.headingDeg = 90;
  s = posed(body, Pose{}, set);
  CHECK(s[Joint::Nose].x() > s[Joint::Head].x() + 0.05);
  CHECK(s[Joint::LeftWrist].z() > 0.1);
}

TEST_CASE("a gaze to the left turns the nose to the figure's left and leaves the hands") {
  const Body body = woman();
  SetFigure set;
  const Skeleton before = posed(body, Pose{}, set);
  set.gazeDeg = 40;
  const Skeleton after = posed(body, Pose{}, set);
  CHECK(after[Joint::Nose].x() > before[Joint::Nose].x() + 0.03);
  CHECK((after[Joint::LeftWrist] - before[Joint::LeftWrist]).norm() < 1e-9);
}

TEST_CASE("turns mean what the header says") {
  const Body body = woman();
  const auto with = [&](const char* joint, std::array<double, 3> turn) {
    Pose pose;
    pose.turnsDeg[joint] = turn;
    return posed(body, pose, SetFigure{});
  };
  const Skeleton rest = posed(body, Pose{}, SetFigure{});
  CHECK(with("left shoulder", {90, 0, 0})[Joint::LeftWrist].z() < -0.4);  // arm forward
  CHECK(with("left shoulder", {180, 0, 0})[Joint::LeftWrist].y() > 1.9);  // arm up
  CHECK(with("left shoulder", {0, 90, 0})[Joint::LeftWrist].x() > 0.6);   // arm sideways
  CHECK(with("right shoulder", {0, 90, 0})[Joint::RightWrist].x() < -0.6);
  CHECK(with("left elbow", {90, 0, 0})[Joint::LeftWrist].z() < -0.2);  // forearm forward
  const Skeleton knee = with("left knee", {90, 0, 0});
  CHECK(knee[Joint::LeftAnkle].z() > knee[Joint::LeftKnee].z() + 0.3);  // heel to seat
  CHECK(with("chest", {30, 0, 0})[Joint::Crown].z() < rest[Joint::Crown].z() - 0.1);
  CHECK(with("chest", {0, 30, 0})[Joint::Crown].x() > 0.1);  // leans to its left
  CHECK(with("left hip", {0, 0, 30})[Joint::LeftToe].x() > rest[Joint::LeftToe].x() + 0.03);
  const Vec3 palm = with("left elbow", {0, 0, 90}).frameOf(Joint::LeftWrist).col(2);
  CHECK(palm.z() == doctest::Approx(-1));  // palm to the front
}

TEST_CASE("posing never changes a length") {
  CHECK(rc::check("any turns leave every bone as long as the body says", [] {
    const Body body = woman();
    const Skeleton s = posed(body, randomPose(), randomPlace());
    const Skeleton rest = posed(body, Pose{}, SetFigure{});
    constexpr std::pair<Joint, Joint> kBones[] = {
        {Joint::Pelvis, Joint::Waist},      {Joint::Waist, Joint::Chest},
        {Joint::Chest, Joint::Neck},        {Joint::Neck, Joint::Head},
        {Joint::Head, Joint::Crown},        {Joint::Head, Joint::Chin},
        {Joint::Head, Joint::Nose},         {Joint::Pelvis, Joint::LeftHip},
        {Joint::LeftAnkle, Joint::LeftToe}, {Joint::RightAnkle, Joint::RightToe}};
    for (const auto& [a, b] : kBones)
      RC_ASSERT(std::abs(apart(s, a, b) - apart(rest, a, b)) < 1e-9);
    const auto is = [&](Joint a, Joint b, double length) {
      RC_ASSERT(std::abs(apart(s, a, b) - length) < 1e-9);
    };
    is(Joint::LeftShoulder, Joint::LeftElbow, body.upperArm);
    is(Joint::RightShoulder, Joint::RightElbow, body.upperArm);
    is(Joint::LeftElbow, Joint::LeftWrist, body.forearm);
    is(Joint::RightElbow, Joint::RightWrist, body.forearm);
    is(Joint::LeftWrist, Joint::LeftFingertip, body.hand);
    is(Joint::RightWrist, Joint::RightFingertip, body.hand);
    is(Joint::LeftHip, Joint::LeftKnee, body.thigh);
    is(Joint::RightHip, Joint::RightKnee, body.thigh);
    is(Joint::LeftKnee, Joint::LeftAnkle, body.shank);
    is(Joint::RightKnee, Joint::RightAnkle, body.shank);
  }));
}

TEST_CASE("a mirrored pose is the picture in a looking-glass") {
  CHECK(rc::check("every joint lies where the mirror shows its partner", [] {
    const Body body = woman();
    const Pose pose = randomPose();
    SetFigure set;
    set.headingDeg = *rc::gen::inRange(-180, 180);
    set.gazeDeg = *rc::gen::inRange(-80, 80);
    const Skeleton s = posed(body, pose, set);
    SetFigure glass = set;
    glass.headingDeg = -set.headingDeg;
    glass.gazeDeg = -set.gazeDeg;
    const Skeleton asPose = posed(body, mirrored(pose), glass);
    glass.poseMirrored = true;
    const Skeleton asFlag = posed(body, pose, glass);
    for (std::size_t i = 0; i < kJoints; ++i) {
      const auto joint = static_cast<Joint>(i);
      RC_ASSERT((asFlag[mirrored(joint)] - lookingGlass(s[joint])).norm() < 1e-9);
      RC_ASSERT((asPose[joint] - asFlag[joint]).norm() < 1e-9);
    }
  }));
}

TEST_CASE("every frame is a rotation: right, up, front at right angles") {
  CHECK(rc::check("frames stay orthonormal", [] {
    const Skeleton s = posed(woman(), randomPose(), randomPlace());
    for (const Eigen::Matrix3d& frame : s.frame) {
      RC_ASSERT((frame * frame.transpose() - Eigen::Matrix3d::Identity()).norm() < 1e-9);
      RC_ASSERT(std::abs(frame.determinant() - 1) < 1e-9);
    }
  }));
}

TEST_CASE("a raised arm takes its shoulder along") {
  const Body body = woman();
  Pose raised;
  raised.turnsDeg["left shoulder"] = {170, 0, 0};
  const Skeleton s = posed(body, raised, SetFigure{});
  CHECK(s[Joint::LeftShoulder].y() > s[Joint::RightShoulder].y() + 0.02 * body.stature);
}

}  // namespace tw
