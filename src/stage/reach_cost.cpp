// The cost of a pose that is being solved for.
//
// Idea: every wish is a pull on a point of the body. The pulls are gathered along the skeleton from
// the tips to the hips, as forces and moments; the slope of the cost along a joint's turn is then
// that joint's axis times the moment about it. One walk over the skeleton gives all slopes, however
// many pulls there are (the transposed Jacobian of robotics; from memory).
//
// Terms, in the order of their strength:
//  1 pins and targets: squared distance; a target's pull is bounded (pseudo-Huber), so that what is
//    out of reach stretches the limb and tears nothing;
//  2 nothing goes through the floor or into the trunk;
//  3 joints beyond their published limit cost, the box of the solver forbids what is beyond grace;
//  4 the mass stays over the feet of who stands, the head keeps its look;
//  5 every turn from the pose at hand costs: of all answers the nearest.
// The shoulder follows its arm (shoulder.h): how far is taken by difference, the rest is exact.
// Cost: one forward pass, about 10 µs. Does badly: limbs may pass through each other.
#include <Eigen/Geometry>
#include <algorithm>
#include <cmath>
#include <numbers>

#include "stage/reach_problem.h"
#include "stage/shoulder.h"

namespace tw {
namespace {

constexpr double kRad = std::numbers::pi / 180;
constexpr double kPullM = 0.02;       // a target farther off pulls no harder than this
constexpr double kLimitWeight = 0.8;  // per square degree beyond the published limit
constexpr double kFloorWeight = 5e4, kTrunkWeight = 600, kMassWeight = 120;  // per m²
constexpr double kLookWeight = 3, kUprightWeight = 1.5, kGazeWeight = 2000;

using enum Joint;

/// Joints with the joint that carries them, tips first.
constexpr std::array<std::pair<Joint, Joint>, 18> kCarried{{{Head, Neck},
                                                            {Neck, Chest},
                                                            {LeftWrist, LeftElbow},
                                                            {LeftElbow, LeftShoulder},
                                                            {LeftShoulder, Chest},
                                                            {RightWrist, RightElbow},
                                                            {RightElbow, RightShoulder},
                                                            {RightShoulder, Chest},
                                                            {Chest, Waist},
                                                            {Waist, Pelvis},
                                                            {LeftToe, LeftAnkle},
                                                            {LeftAnkle, LeftKnee},
                                                            {LeftKnee, LeftHip},
                                                            {LeftHip, Pelvis},
                                                            {RightToe, RightAnkle},
                                                            {RightAnkle, RightKnee},
                                                            {RightKnee, RightHip},
                                                            {RightHip, Pelvis}}};

Joint carrierOf(Joint joint) {
  for (const auto& [carried, carrier] : kCarried)
    if (carried == joint) return carrier;
  return Pelvis;
}

double sideOfJoint(Joint joint) {
  return nameOf(joint).starts_with("left") ? -1.0 : 1.0;
}

/// A turn about the parent's right axis by that angle, applied to its front.
Vec3 tippedFront(double deg) {
  return {0, -std::sin(deg * kRad), std::cos(deg * kRad)};
}

}  // namespace

double ReachProblem::cost(const double* x, double* gradient) {
  skeletonAt(x);
  forces_.fill(Force{});
  double sum = stayCost(x, gradient) + limitCost(gradient) + armTwistCost(gradient);
  sum += goalCost() + gazeCost() + headCost() + balanceCost() + floorCost() + trunkCost();
  if (gradient == nullptr) return sum;
  gather();
  for (std::size_t i = 0; i < ways_.size(); ++i) {
    const double perUnit = ways_[i].unit * (ways_[i].kind == Kind::Move ? 1 : kRad);
    gradient[i] += slopeOf(ways_[i]) * perUnit;
  }
  return sum;
}

void ReachProblem::push(Joint joint, const Vec3& at, const Vec3& slope) {
  Force& f = forces_[static_cast<std::size_t>(joint)];
  f.push += slope;
  f.turn += at.cross(slope);
}

void ReachProblem::twist(Joint joint, const Vec3& direction, const Vec3& slope) {
  forces_[static_cast<std::size_t>(joint)].turn += direction.cross(slope);
}

void ReachProblem::gather() {
  for (const auto& [joint, carrier] : kCarried) {
    const Force& from = forces_[static_cast<std::size_t>(joint)];
    Force& to = forces_[static_cast<std::size_t>(carrier)];
    to.push += from.push;
    to.turn += from.turn;
  }
}

double ReachProblem::slopeOf(const Way& way) const {
  const Force& f = forces_[static_cast<std::size_t>(way.joint)];
  if (way.kind == Kind::Move) return f.push[way.axis];
  if (way.kind == Kind::Girdle) return shoulderSlope(way).dot(f.push);
  const double turned = axisOf(way).dot(f.turn - skeleton_[way.joint].cross(f.push));
  const bool arm = way.joint == LeftShoulder || way.joint == RightShoulder;
  return arm && way.axis != 2 ? turned + shoulderSlope(way).dot(f.push) : turned;
}

Vec3 ReachProblem::axisOf(const Way& way) const {
  const double side = sideOfJoint(way.joint);
  if (way.kind == Kind::Root) {
    const double heading = (set_.headingDeg + pose_.rootTurnDeg[2]) * kRad;
    if (way.axis == 0) return {-std::cos(heading), 0, -std::sin(heading)};
    if (way.axis == 1) return skeleton_.frameOf(Pelvis).col(2);
    return {0, -1, 0};
  }
  if (way.kind == Kind::Forearm)
    return side * skeleton_.frameOf(way.joint == LeftWrist ? LeftElbow : RightElbow).col(1);
  const Eigen::Matrix3d& carrier = skeleton_.frameOf(carrierOf(way.joint));
  const Eigen::Matrix3d& own = skeleton_.frameOf(way.joint);
  const double flex = *(way.turn - way.axis);
  if (way.kind == Kind::Trunk) {
    if (way.axis == 0) return carrier.col(0);
    return way.axis == 1 ? Vec3(carrier * tippedFront(flex)) : Vec3(-own.col(1));
  }
  const double bend = way.joint == LeftKnee || way.joint == RightKnee ? 1 : -1;
  if (way.axis == 0) return bend * carrier.col(0);
  return way.axis == 1 ? Vec3(side * (carrier * tippedFront(bend * flex)))
                       : Vec3(side * own.col(1));
}

/// How fast the shoulder joint moves with that turn, metres per radian.
Vec3 ReachProblem::shoulderSlope(const Way& way) const {
  constexpr double kStepDeg = 0.05;
  const bool left = way.joint == LeftShoulder;
  const auto girdle = pose_.turnsDeg.find(left ? "left girdle" : "right girdle");
  const auto at = [&](double deg) {
    Eigen::Matrix3d arm = skeleton_.frameOf(way.joint);
    std::array<double, 3> turn = girdle->second;
    if (way.kind == Kind::Girdle)
      turn[static_cast<std::size_t>(way.axis)] += deg;
    else
      arm = Eigen::AngleAxisd(deg * kRad, axisOf(way)).toRotationMatrix() * arm;
    return shoulderPlace(body_, skeleton_[Chest], skeleton_.frameOf(Chest), arm, turn, left);
  };
  return (at(kStepDeg) - at(-kStepDeg)) / (2 * kStepDeg * kRad);
}

double ReachProblem::stayCost(const double* x, double* gradient) const {
  double sum = 0;
  for (std::size_t i = 0; i < ways_.size(); ++i) {
    sum += x[i] * x[i];
    if (gradient != nullptr) gradient[i] = 2 * x[i];
  }
  return sum;
}

double ReachProblem::limitCost(double* gradient) const {
  double sum = 0;
  for (std::size_t i = 0; i < ways_.size(); ++i) {
    const Way& w = ways_[i];
    if (w.turn == nullptr) continue;
    // What the pose has beyond its limits already is no offence.
    const double least = std::min(w.softLeast, w.start), most = std::max(w.softMost, w.start);
    const double over = *w.turn > most ? *w.turn - most : *w.turn < least ? *w.turn - least : 0;
    sum += kLimitWeight * over * over;
    if (gradient != nullptr) gradient[i] += 2 * kLimitWeight * over * w.unit;
  }
  return sum;
}

double ReachProblem::armTwistCost(double* gradient) const {
  constexpr double kStep = 1e-3;
  double sum = 0;
  for (const std::size_t first : shoulderWays_) {
    const double* turn = ways_[first].turn;
    const double slack = armTwistSlack(turn[0], turn[1]);
    const double least = shoulder_[2].least - slack, most = shoulder_[2].most + slack;
    const double over = turn[2] > most ? turn[2] - most : turn[2] < least ? turn[2] - least : 0;
    if (over == 0) continue;
    sum += 2 * kLimitWeight * over * over;
    if (gradient == nullptr) continue;
    const double slope = 4 * kLimitWeight * over, sign = over > 0 ? -1 : 1;
    for (std::size_t k = 0; k < 2; ++k) {
      const double more =
          armTwistSlack(turn[0] + (k == 0 ? kStep : 0), turn[1] + (k == 1 ? kStep : 0));
      gradient[first + k] += slope * sign * (more - slack) / kStep * ways_[first + k].unit;
    }
    gradient[first + 2] += slope * ways_[first + 2].unit;
  }
  return sum;
}

Vec3 ReachProblem::placeOfGoal(const Goal& goal) const {
  return skeleton_[goal.joint] + skeleton_.frameOf(goal.joint) * goal.local;
}

double ReachProblem::goalCost() {
  double sum = 0;
  for (const Goal& goal : goals_) {
    const Vec3 at = placeOfGoal(goal), off = at - goal.pulledTo;
    const double root = goal.target ? std::sqrt(1 + off.squaredNorm() / (kPullM * kPullM)) : 1.0;
    sum += goal.target ? 2 * goal.weight * kPullM * kPullM * (root - 1)
                       : goal.weight * off.squaredNorm();
    push(goal.joint, at, 2 * goal.weight / root * off);
  }
  return sum;
}

double ReachProblem::gazeCost() {
  double sum = 0;
  for (const ReachTarget& target : wish_.targets) {
    if (target.part != MovedPart::Gaze) continue;
    const Vec3 at = placeOf(MovedPart::Head, body_, skeleton_);
    const double away = std::max(0.1, (target.to - at).norm());
    const Vec3 to = (target.to - at) / away, front = skeleton_.frameOf(Head).col(2);
    const double along = front.dot(to);
    sum += kGazeWeight * (1 - along);
    push(Head, at, kGazeWeight / away * (front - along * to));
    twist(Head, front, -kGazeWeight * to);
  }
  return sum;
}

double ReachProblem::headCost() {
  const auto keep = [&](int column, double weight) {
    const Vec3 now = skeleton_.frameOf(Head).col(column);
    const Vec3 off = now - start_.frameOf(Head).col(column);
    twist(Head, now, 2 * weight * off);
    return weight * off.squaredNorm();
  };
  return (isMoved(MovedPart::Gaze) ? 0.0 : keep(2, kLookWeight)) + keep(1, kUprightWeight);
}

double ReachProblem::balanceCost() {
  if (!massOffset_) return 0;
  Vec3 off = centreOfMass(body_, skeleton_) - feetMiddle(skeleton_) - *massOffset_;
  off.y() = 0;
  const Vec3 slope = 2 * kMassWeight * off;
  for (const MassPart& part : massParts(body_, skeleton_))
    push(part.joint, part.at, part.mass * slope);
  const double share = standsLeft_ && standsRight_ ? -0.25 : -0.5;
  const auto foot = [&](Joint ankle, Joint toe) {
    push(ankle, skeleton_[ankle], share * slope);
    push(ankle, skeleton_[toe], share * slope);
  };
  if (standsLeft_) foot(LeftAnkle, LeftToe);
  if (standsRight_) foot(RightAnkle, RightToe);
  return kMassWeight * off.squaredNorm();
}

double ReachProblem::floorCost() {
  if (pose_.support == "none") return 0;
  double sum = 0;
  const std::vector<Contact> contacts = contactsOf(body_, skeleton_);
  std::size_t first = 0;
  for (std::size_t k = 0; k < contacts.size(); ++k) {
    if (contacts[k].at.y() < contacts[first].at.y()) first = k;
    const double into = std::min(0.0, contacts[k].at.y() - set_.at.y - floorLift_[k]);
    if (into >= 0) continue;
    sum += kFloorWeight * into * into;
    push(contacts[k].joint, contacts[k].at, Vec3(0, 2 * kFloorWeight * into, 0));
  }
  const double clear = contacts[first].at.y() - set_.at.y;
  if (clear <= 0) return sum;
  // Nothing touches: the figure would sink.
  push(contacts[first].joint, contacts[first].at, Vec3(0, 2 * kFloorWeight * clear, 0));
  return sum + kFloorWeight * clear * clear;
}

Vec3 ReachProblem::nearestOnTrunk(const Vec3& at) const {
  const Vec3 along = skeleton_[Neck] - skeleton_[Pelvis];
  const double t = std::clamp((at - skeleton_[Pelvis]).dot(along) / along.squaredNorm(), 0.0, 1.0);
  return skeleton_[Pelvis] + t * along;
}

double ReachProblem::trunkCost() {
  double sum = 0;
  const std::array<Joint, 4> joints{LeftWrist, RightWrist, LeftElbow, RightElbow};
  for (std::size_t k = 0; k < 4; ++k) {
    const Vec3& at = skeleton_[joints[k]];
    const Vec3 near = nearestOnTrunk(at), off = at - near;
    const double gap = off.norm(), into = clearance_[k] - gap;
    if (into <= 0 || gap < 1e-6) continue;
    const Vec3 slope = -2 * kTrunkWeight * into * off / gap;
    const double t =
        (near - skeleton_[Pelvis]).norm() / (skeleton_[Neck] - skeleton_[Pelvis]).norm();
    push(joints[k], at, slope);
    push(Neck, skeleton_[Neck], -t * slope);
    push(Pelvis, skeleton_[Pelvis], -(1 - t) * slope);
    sum += kTrunkWeight * into * into;
  }
  return sum;
}

}  // namespace tw
