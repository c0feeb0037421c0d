// The set-up of a reach problem: which joints may turn and how readily, what must stay, where the
// moved parts have to go. The terms of the cost and their slopes are in reach_cost.cpp.
#include "stage/reach_problem.h"

#include <algorithm>
#include <cmath>

#include "stage/figure_proportions.h"

namespace tw {
namespace {

// How readily each joint gives way: the turn, in degrees, that costs as much as any other joint's.
// Arms first, the back a little, the whole figure last. Common practice, no source.
constexpr std::array<double, 3> kHeadUnits{10, 8, 12}, kWaistUnits{10, 8, 10},
    kChestUnits{11, 8, 12}, kGirdleUnits{7, 8, 0}, kShoulderUnits{45, 45, 40},
    kElbowUnits{45, 0, 0}, kHipUnits{30, 22, 22}, kKneeUnits{36, 0, 0}, kAnkleUnits{18, 10, 10},
    kToesUnits{18, 0, 0}, kRootUnits{8, 6, 9};
constexpr double kForearmUnit = 30;
constexpr double kMoveUnit = 0.09, kMovedPelvisUnit = 0.3;  // metres

constexpr double kTargetWeight = 1e4, kPinWeight = 2e5;  // per square metre
constexpr double kSoleWeight = 2e3, kSoleInAirWeight = 15, kHeelWeight = 250, kLetGoWeight = 5e3;
constexpr double kNearM = 0.05;  // a goal farther off is out of reach: pulling harder is no use
constexpr double kOnFloorM = 0.03, kStandsBelow = 0.35;

bool isArm(Joint joint, bool left) {
  using enum Joint;
  return left ? joint == LeftShoulder || joint == LeftElbow || joint == LeftWrist
              : joint == RightShoulder || joint == RightElbow || joint == RightWrist;
}

/// The frame that carries the joint's place.
Joint carrierOf(Joint joint) {
  using enum Joint;
  if (joint == LeftFingertip) return LeftWrist;
  if (joint == RightFingertip) return RightWrist;
  if (joint == Crown || joint == Chin || joint == Nose) return Head;
  return joint;
}

TurnRanges halfOf(const TurnRanges& ranges, double shift) {
  TurnRanges out = ranges;
  for (TurnRange& r : out) r = {r.least / 2, r.most / 2};
  out[2] = {out[2].least - shift, out[2].most - shift};
  return out;
}

}  // namespace

ReachProblem::ReachProblem(const Body& body, const Pose& pose, const SetFigure& set,
                           const ReachWish& wish, const JointLimits& limits)
    : body_(body),
      pose_(pose),
      set_(set),
      wish_(wish),
      graceDeg_(limits.graceDeg()),
      shoulder_(limits.of("shoulder")) {
  ensure(!set.poseMirrored && set.turnsDeg.empty(), "a reach problem is solved unmirrored");
  start_ = skeleton_ = posed(body_, pose_, set_);
  rootHeight_ = start_[Joint::Pelvis].y();
  floorLift_.assign(contactsOf(body_, start_).size(), 0);
  for (const ReachTarget& target : wish.targets) addTarget(target);
  for (const Joint joint : wish.pins) addPin(joint);
  if (wish.keepSupport) keepSupport();
  addRoot();
  addTrunk(limits);
  for (const bool left : {true, false}) addLimbs(limits, left);
  keepClear();
  keepBalance();
}

void ReachProblem::addTurns(const std::string& name, Joint joint, Kind kind,
                            const TurnRanges& ranges, const std::array<double, 3>& units) {
  std::array<double, 3>& turn = pose_.turnsDeg[name];
  for (int axis = 0; axis < 3; ++axis) {
    const auto i = static_cast<std::size_t>(axis);
    if (units[i] <= 0) continue;
    const bool hinge = name.ends_with("elbow") || name.ends_with("knee");
    const double grace = kind == Kind::Trunk ? graceDeg_ / 2 : graceDeg_;
    const double least = ranges[i].least - (hinge ? 0 : grace), most = ranges[i].most + grace;
    ways_.push_back({kind, joint, axis, units[i], turn[i], std::min(least, turn[i]),
                     std::max(most, turn[i]), ranges[i].least, ranges[i].most, &turn[i]});
  }
}

void ReachProblem::addTrunk(const JointLimits& limits) {
  addTurns("waist", Joint::Waist, Kind::Trunk, halfOf(limits.of("back"), 0), kWaistUnits);
  addTurns("chest", Joint::Chest, Kind::Trunk, halfOf(limits.of("back"), 0), kChestUnits);
  const TurnRanges& neck = limits.of("neck");
  addTurns("neck", Joint::Neck, Kind::Trunk, halfOf(neck, 0.4 * set_.gazeDeg), kHeadUnits);
  addTurns("head", Joint::Head, Kind::Trunk, halfOf(neck, 0.6 * set_.gazeDeg), kHeadUnits);
}

void ReachProblem::addLimbs(const JointLimits& limits, bool left) {
  using enum Joint;
  const std::string side = left ? "left " : "right ";
  const bool arm = std::any_of(goals_.begin(), goals_.end(),
                               [&](const Goal& g) { return isArm(g.joint, left); });
  if (arm) {
    const Joint shoulder = left ? LeftShoulder : RightShoulder;
    addTurns(side + "girdle", shoulder, Kind::Girdle, limits.of("girdle"), kGirdleUnits);
    shoulderWays_.push_back(ways_.size());
    addTurns(side + "shoulder", shoulder, Kind::Limb, limits.of("shoulder"), kShoulderUnits);
    // The twist's limits widen with the arm's elevation: armTwistCost() keeps them.
    Way& twist = ways_.back();
    twist.least = std::min(twist.least - 135, twist.start);
    twist.most = std::max(twist.most + 135, twist.start);
    twist.softLeast = -1e9;
    twist.softMost = 1e9;
    addTurns(side + "elbow", left ? LeftElbow : RightElbow, Kind::Limb, limits.of("elbow"),
             kElbowUnits);
    addTurns(side + "elbow", left ? LeftWrist : RightWrist, Kind::Forearm, limits.of("elbow"),
             {0, 0, kForearmUnit});
  }
  addTurns(side + "hip", left ? LeftHip : RightHip, Kind::Limb, limits.of("hip"), kHipUnits);
  addTurns(side + "knee", left ? LeftKnee : RightKnee, Kind::Limb, limits.of("knee"), kKneeUnits);
  addTurns(side + "ankle", left ? LeftAnkle : RightAnkle, Kind::Limb, limits.of("ankle"),
           kAnkleUnits);
  addTurns(side + "toes", left ? LeftToe : RightToe, Kind::Limb, limits.of("toes"), kToesUnits);
}

void ReachProblem::addRoot() {
  for (int axis = 0; axis < 3; ++axis) {
    const auto i = static_cast<std::size_t>(axis);
    const double start = pose_.rootTurnDeg[i];
    ways_.push_back({Kind::Root, Joint::Pelvis, axis, kRootUnits[i], start, start - 60, start + 60,
                     -1e9, 1e9, &pose_.rootTurnDeg[i]});
  }
  const double unit = isMoved(MovedPart::Pelvis) ? kMovedPelvisUnit : kMoveUnit;
  for (int axis = 0; axis < 3; ++axis)
    ways_.push_back({Kind::Move, Joint::Pelvis, axis, unit, 0, -3, 3, -1e9, 1e9, nullptr});
}

bool ReachProblem::isMoved(MovedPart part) const {
  return std::any_of(wish_.targets.begin(), wish_.targets.end(),
                     [&](const ReachTarget& t) { return t.part == part; });
}

void ReachProblem::addGoal(Joint joint, const Vec3& at, const Vec3& to, double weight,
                           bool target) {
  const Vec3 local = start_.frameOf(joint).transpose() * (at - start_[joint]);
  goals_.push_back({joint, local, to, to, weight, target});
}

void ReachProblem::addTarget(const ReachTarget& target) {
  using enum Joint;
  const Vec3 at = placeOf(target.part, body_, start_);
  const auto add = [&](Joint joint) { addGoal(joint, at, target.to, kTargetWeight, true); };
  switch (target.part) {
    case MovedPart::LeftHand:
      add(LeftWrist);
      break;
    case MovedPart::RightHand:
      add(RightWrist);
      break;
    case MovedPart::LeftFoot:
    case MovedPart::RightFoot: {
      const bool left = target.part == MovedPart::LeftFoot;
      add(left ? LeftAnkle : RightAnkle);
      // The sole stays as it is turned: flat on the floor, loosely so in the air.
      const bool onFloor = target.to.y() < set_.at.y + kOnFloorM;
      const double weight = onFloor ? kSoleWeight : kSoleInAirWeight;
      const std::vector<Contact> contacts = contactsOf(body_, start_);
      for (std::size_t k = 0; k < 2; ++k) {
        const Vec3& point = contacts[(left ? 0u : 3u) + k].at;
        addGoal(left ? LeftAnkle : RightAnkle, point, point + target.to - at, weight, false);
      }
      break;
    }
    case MovedPart::Head:
      add(Head);
      break;
    case MovedPart::Pelvis:
      add(Pelvis);
      break;
    case MovedPart::Gaze:
      break;  // gazeCost()
  }
}

void ReachProblem::addPin(Joint joint) {
  using enum Joint;
  if (joint == LeftAnkle || joint == RightAnkle) {
    const std::vector<Contact> contacts = contactsOf(body_, start_);
    for (std::size_t k = 0; k < 2; ++k) {
      const Vec3& point = contacts[(joint == LeftAnkle ? 0u : 3u) + k].at;
      addGoal(joint, point, point, kPinWeight, false);
    }
  }
  const bool wrist = joint == LeftWrist || joint == RightWrist;
  const Vec3 at = wrist ? placeOf(joint == LeftWrist ? MovedPart::LeftHand : MovedPart::RightHand,
                                  body_, start_)
                        : start_[joint];
  addGoal(carrierOf(joint), at, at, kPinWeight, false);
}

/// A foot flat on the floor is held by heel, ball and ankle; one on its ball by the ball and,
/// loosely, by the rest, so that the heel may rise.
void ReachProblem::addFootPins(bool left, const std::vector<Contact>& contacts) {
  const double floor = set_.at.y;
  const Joint ankle = left ? Joint::LeftAnkle : Joint::RightAnkle;
  const Contact &heel = contacts[left ? 0 : 3], &ball = contacts[left ? 1 : 4],
                &tip = contacts[left ? 2 : 5];
  if (!touches(heel, floor) && !touches(ball, floor) && !touches(tip, floor)) return;
  const bool flat = touches(heel, floor) && touches(ball, floor);
  addGoal(ankle, ball.at, ball.at, kPinWeight, false);
  addGoal(tip.joint, tip.at, tip.at, flat ? kSoleWeight : kPinWeight, false);
  // Hips that are sent down may lift the heels, as a deep crouch does.
  const double heelWeight = !flat                        ? kSoleInAirWeight
                            : isMoved(MovedPart::Pelvis) ? kHeelWeight
                                                         : kPinWeight;
  addGoal(ankle, heel.at, heel.at, heelWeight, false);
  addGoal(ankle, start_[ankle], start_[ankle], heelWeight, false);
}

void ReachProblem::keepSupport() {
  const std::vector<Contact> contacts = contactsOf(body_, start_);
  if (pose_.support == "none") return;
  if (!isMoved(MovedPart::LeftFoot)) addFootPins(true, contacts);
  if (!isMoved(MovedPart::RightFoot)) addFootPins(false, contacts);
  if (pose_.seat > 0 && !isMoved(MovedPart::Pelvis))
    addGoal(Joint::Pelvis, start_[Joint::Pelvis], start_[Joint::Pelvis], kPinWeight, false);
  for (std::size_t k = 6; k < contacts.size(); ++k) {
    const Contact& c = contacts[k];
    const bool moved = (c.joint == Joint::LeftWrist && isMoved(MovedPart::LeftHand)) ||
                       (c.joint == Joint::RightWrist && isMoved(MovedPart::RightHand)) ||
                       (c.joint == Joint::LeftKnee && isMoved(MovedPart::LeftFoot)) ||
                       (c.joint == Joint::RightKnee && isMoved(MovedPart::RightFoot)) ||
                       (c.joint == Joint::Pelvis && isMoved(MovedPart::Pelvis));
    if (!moved && touches(c, set_.at.y)) addGoal(c.joint, c.at, c.at, kPinWeight, false);
  }
}

/// Palms and elbows stay out of the trunk, unless they are in it already.
void ReachProblem::keepClear() {
  using enum Joint;
  const double round = 0.5 * body_.chestDepth + 0.022 * body_.stature;
  const std::array<Joint, 4> joints{LeftWrist, RightWrist, LeftElbow, RightElbow};
  for (std::size_t k = 0; k < 4; ++k)
    clearance_[k] = std::min(round, (start_[joints[k]] - nearestOnTrunk(start_[joints[k]])).norm());
}

/// A figure that stands keeps its mass where it had it over its feet; on one foot, over that foot.
void ReachProblem::keepBalance() {
  if (pose_.support != "feet" || pose_.motion >= kStandsBelow || isMoved(MovedPart::Pelvis)) return;
  const auto stands = [&](MovedPart part, bool left) {
    for (const ReachTarget& t : wish_.targets)
      if (t.part == part) return t.to.y() < set_.at.y + kOnFloorM;
    const std::vector<Contact> contacts = contactsOf(body_, start_);
    return touches(contacts[left ? 0 : 3], set_.at.y) || touches(contacts[left ? 1 : 4], set_.at.y);
  };
  standsLeft_ = stands(MovedPart::LeftFoot, true);
  standsRight_ = stands(MovedPart::RightFoot, false);
  if (!standsLeft_ && !standsRight_) return;
  massOffset_ = standsLeft_ && standsRight_ ? Vec3(centreOfMass(body_, start_) - feetMiddle(start_))
                                            : Vec3::Zero();
}

Vec3 ReachProblem::feetMiddle(const Skeleton& s) const {
  const Vec3 left = 0.5 * (s[Joint::LeftAnkle] + s[Joint::LeftToe]);
  const Vec3 right = 0.5 * (s[Joint::RightAnkle] + s[Joint::RightToe]);
  if (standsLeft_ && standsRight_) return 0.5 * (left + right);
  return standsLeft_ ? left : right;
}

std::vector<double> ReachProblem::least() const {
  std::vector<double> out;
  for (const Way& w : ways_) out.push_back((w.least - w.start) / w.unit);
  return out;
}

std::vector<double> ReachProblem::most() const {
  std::vector<double> out;
  for (const Way& w : ways_) out.push_back((w.most - w.start) / w.unit);
  return out;
}

const Skeleton& ReachProblem::skeletonAt(const double* x) {
  Vec3 way = Vec3::Zero();
  for (std::size_t i = 0; i < ways_.size(); ++i) {
    const Way& w = ways_[i];
    if (w.kind == Kind::Move)
      way[w.axis] = w.unit * x[i];
    else
      *w.turn = w.start + w.unit * x[i];
  }
  skeleton_ = posed(body_, pose_, set_);
  way.y() += rootHeight_ - skeleton_[Joint::Pelvis].y();
  for (Vec3& at : skeleton_.at) at += way;
  return skeleton_;
}

Pose ReachProblem::poseAt(const std::vector<double>& x) {
  skeletonAt(x.data());
  return pose_;
}

Vec3 ReachProblem::wayAt(const std::vector<double>& x) const {
  Vec3 way = Vec3::Zero();
  for (std::size_t i = 0; i < ways_.size(); ++i)
    if (ways_[i].kind == Kind::Move) way[ways_[i].axis] = ways_[i].unit * x[i];
  return way;
}

ReachProblem::Miss ReachProblem::correctGoals(const std::vector<double>& x) {
  skeletonAt(x.data());
  Miss out;
  for (Goal& goal : goals_) {
    if (goal.weight < kTargetWeight && !goal.target) continue;
    const Vec3 miss = goal.to - placeOfGoal(goal);
    if (miss.norm() > kNearM) {
      ++out.far;
      continue;
    }
    out.nearM = std::max(out.nearM, miss.norm());
    goal.pulledTo += miss;
  }
  if (pose_.support == "none") return out;
  const std::vector<Contact> contacts = contactsOf(body_, skeleton_);
  for (std::size_t k = 0; k < contacts.size(); ++k) {
    const double high = contacts[k].at.y() - set_.at.y;
    floorLift_[k] = std::max(0.0, floorLift_[k] - high);
    out.nearM = std::max(out.nearM, -high);
  }
  return out;
}

void ReachProblem::letGo(const std::vector<double>& x) {
  skeletonAt(x.data());
  for (Goal& goal : goals_) {
    const Vec3 at = placeOfGoal(goal);
    if (goal.target && (goal.to - at).norm() > kNearM)
      goal.pulledTo = at, goal.weight = kLetGoWeight;
  }
}

void ReachProblem::resetGoals() {
  for (Goal& goal : goals_) {
    goal.pulledTo = goal.to;
    if (goal.target) goal.weight = kTargetWeight;
  }
  std::fill(floorLift_.begin(), floorLift_.end(), 0);
}

double ReachProblem::targetMiss(const std::vector<double>& x) {
  skeletonAt(x.data());
  double most = 0;
  for (const Goal& goal : goals_)
    if (goal.target) most = std::max(most, (goal.to - placeOfGoal(goal)).norm());
  return most;
}

bool ReachProblem::isOutOfReach(const std::vector<double>& x) {
  constexpr double kMissM = 0.002, kNearly = 0.985;
  using enum Joint;
  skeletonAt(x.data());
  const double arm = body_.upperArm + body_.forearm + 0.6 * body_.hand;
  const double leg = body_.thigh + body_.shank + body_.ankleHeight;
  for (const Goal& goal : goals_) {
    if (!goal.target || (goal.to - placeOfGoal(goal)).norm() < kMissM) continue;
    const auto tooFar = [&](Joint from, double length) {
      return (goal.to - skeleton_[from]).norm() > kNearly * length;
    };
    const bool hopeless = goal.joint == LeftWrist    ? tooFar(LeftShoulder, arm)
                          : goal.joint == RightWrist ? tooFar(RightShoulder, arm)
                          : goal.joint == LeftAnkle  ? tooFar(LeftHip, leg)
                          : goal.joint == RightAnkle ? tooFar(RightHip, leg)
                                                     : true;
    if (!hopeless) return false;
  }
  return true;
}

bool ReachProblem::otherStart(std::size_t number, std::vector<double>& x) const {
  // flex and aside of shoulder or hip, flex of elbow or knee
  constexpr std::array<std::array<double, 3>, 6> kAttitudes{
      {{60, 20, 70}, {10, 20, 60}, {130, 20, 50}, {20, 80, 40}, {70, -20, 60}, {-30, 15, 50}}};
  if (number >= kAttitudes.size()) return false;
  x.assign(ways_.size(), 0);
  bool isOther = false;  // a head or hips alone have no limb to begin otherwise with
  for (std::size_t i = 0; i < ways_.size(); ++i) {
    const Way& w = ways_[i];
    if (w.kind != Kind::Limb || w.axis == 2) continue;
    const bool leg = !isArm(w.joint, true) && !isArm(w.joint, false);
    const bool moved = std::any_of(goals_.begin(), goals_.end(), [&](const Goal& g) {
      const bool left = nameOf(g.joint).starts_with("left");
      if (!g.target || left != nameOf(w.joint).starts_with("left")) return false;
      return leg ? g.joint == Joint::LeftAnkle || g.joint == Joint::RightAnkle
                 : isArm(g.joint, left);
    });
    using enum Joint;
    const bool upper = w.joint == LeftShoulder || w.joint == RightShoulder || w.joint == LeftHip ||
                       w.joint == RightHip;
    const bool lower = w.joint == LeftElbow || w.joint == RightElbow || w.joint == LeftKnee ||
                       w.joint == RightKnee;
    if (!moved || (!upper && !lower)) continue;
    const double turn = kAttitudes[number][upper ? static_cast<std::size_t>(w.axis) : 2];
    x[i] = (std::clamp(turn, w.least, w.most) - w.start) / w.unit;
    isOther = true;
  }
  return isOther;
}

}  // namespace tw
