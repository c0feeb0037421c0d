#include "stage/pose_moves.h"

#include <cmath>
#include <memory>

#include "stage/volumes.h"

namespace tw {
namespace {

constexpr double kSameM = 0.10;      // a hand that is there already is not moved
constexpr double kShortM = 0.12;     // a move that falls shorter than this is none
constexpr double kMostGazeDeg = 60;  // AAOS, the neck's turn
constexpr double kOpenHand = 0.6;    // the palm lies at that share of the hand

/// Level directions of the body: its right hand side, up, its front.
struct Ways {
  Vec3 right, front, up{0, 1, 0};
  Vec3 out(bool left) const { return left ? Vec3(-right) : right; }
};

Ways waysOf(const Stance& stance, const Skeleton& s) {
  const Vec3 across = s[Joint::RightShoulder] - s[Joint::LeftShoulder];
  const Vec3 front = bodyFront(s);
  Vec3 right(across.x(), 0, across.z());
  // A figure that lies has no level shoulders; its heading tells instead.
  if (right.norm() < 0.1) {
    const double a = stance.set.headingDeg * 0.01745329252;
    right = {-std::cos(a), 0, -std::sin(a)};
  }
  right.normalize();
  Vec3 level(front.x(), 0, front.z());
  level -= right * level.dot(right);
  if (level.norm() < 0.1) level = Vec3(right.z(), 0, -right.x());
  return {right, level.normalized()};
}

class Moves {
 public:
  Moves(const JointLimits& limits, double sideDeg) : limits_(limits), sideDeg_(sideDeg) {}

  std::vector<PoseMove> all() {
    for (const bool left : {false, true}) addArm(left);
    addLegs();
    addTrunk();
    addTurns();
    addHead();
    return std::move(moves_);
  }

 private:
  using Made = std::optional<Stance>;

  void add(std::string name, MoveKind kind, std::function<Made(const Stance&)> made) {
    moves_.push_back({std::move(name), kind, std::move(made)});
  }

  /// Solves for the targets with busy hands pinned. Nothing when a target is missed by far.
  Made reached(const Stance& from, std::vector<ReachTarget> targets) const {
    ReachWish wish{std::move(targets), {}};
    const auto isTarget = [&](MovedPart part) {
      for (const ReachTarget& t : wish.targets)
        if (t.part == part) return true;
      return false;
    };
    if (from.leftBusy && !isTarget(MovedPart::LeftHand)) wish.pins.push_back(Joint::LeftWrist);
    if (from.rightBusy && !isTarget(MovedPart::RightHand)) wish.pins.push_back(Joint::RightWrist);
    for (const auto& [ankle, foot] : {std::pair{Joint::LeftAnkle, MovedPart::LeftFoot},
                                      std::pair{Joint::RightAnkle, MovedPart::RightFoot}}) {
      if (!from.touches(ankle)) continue;
      if (isTarget(foot)) return std::nullopt;
      wish.pins.push_back(ankle);
    }
    const ReachedPose r = reachPose(*from.body, from.pose, from.set, wish, limits_);
    for (const Reached& part : r.reached)
      if (part.shortM > kShortM) return std::nullopt;
    if (r.pinsMovedM > 0.01) return std::nullopt;
    Stance out = from;
    out.pose = r.pose;
    out.set = r.set;
    return out;
  }

  /// A hand to a place about its shoulder, in shares of the arm's length.
  Made handTo(const Stance& from, bool left, double up, double out, double front) const {
    const Skeleton s = from.skeleton();
    const Ways ways = waysOf(from, s);
    const Body& b = *from.body;
    const double length = b.upperArm + b.forearm + kOpenHand * b.hand;
    const Vec3 shoulder = s[left ? Joint::LeftShoulder : Joint::RightShoulder];
    const Vec3 to = shoulder + length * (up * ways.up + out * ways.out(left) + front * ways.front);
    return handAt(from, s, left, to);
  }

  Made handAt(const Stance& from, const Skeleton& s, bool left, const Vec3& to) const {
    const MovedPart hand = left ? MovedPart::LeftHand : MovedPart::RightHand;
    if ((placeOf(hand, *from.body, s) - to).norm() < kSameM) return std::nullopt;
    // Where both hands hold one thing, neither can be moved alone.
    if (from.leftBusy && from.rightBusy) return std::nullopt;
    return reached(from, {{hand, to}});
  }

  void addArm(bool left) {
    const std::string arm = left ? "left arm" : "right arm";
    const MoveKind kind = left ? MoveKind::LeftArm : MoveKind::RightArm;
    const auto to = [&](const char* how, double up, double out, double front) {
      add(arm + how, kind, [this, left, up, out, front](const Stance& from) {
        return handTo(from, left, up, out, front);
      });
    };
    to(" raised high", 0.84, 0.32, 0.22);
    to(" raised", 0.42, 0.62, 0.42);
    to(" out to the side", -0.10, 0.78, 0.34);
    to(" out in front", 0.02, 0.08, 0.86);
    to(" drawn back", -0.40, 0.52, -0.50);
    to(" lowered", -0.90, 0.26, 0.10);
    add(left ? "left hand on the hip" : "right hand on the hip", kind,
        [this, left](const Stance& from) -> Made {
          if (left ? from.leftBusy : from.rightBusy) return std::nullopt;
          const Skeleton s = from.skeleton();
          const Ways ways = waysOf(from, s);
          const Body& b = *from.body;
          const Vec3 hip = s[Joint::Waist] - 0.2 * (s[Joint::Waist] - s[Joint::Pelvis]);
          return handAt(from, s, left,
                        hip + ways.out(left) * (0.5 * b.hipBreadth + 0.01) + 0.02 * ways.front);
        });
  }

  Made feetApart(const Stance& from, double by) const {
    const Skeleton s = from.skeleton();
    const Body& b = *from.body;
    const Vec3 left = placeOf(MovedPart::LeftFoot, b, s),
               right = placeOf(MovedPart::RightFoot, b, s);
    Vec3 apart = right - left;
    apart.y() = 0;
    if (apart.norm() < 0.08 || (by < 0 && apart.norm() < 0.26)) return std::nullopt;
    if (by > 0 && apart.norm() > 0.42 * b.stature) return std::nullopt;
    const Vec3 step = apart.normalized() * (by * b.stature / 2);
    return reached(from,
                   {{MovedPart::LeftFoot, left - step}, {MovedPart::RightFoot, right + step}});
  }

  Made footUp(const Stance& from, bool left) const {
    // Who hauls needs both feet.
    if (from.pose.support != "feet" || from.moving || (from.leftBusy && from.rightBusy))
      return std::nullopt;
    const Skeleton s = from.skeleton();
    const MovedPart foot = left ? MovedPart::LeftFoot : MovedPart::RightFoot;
    const Vec3 at = placeOf(foot, *from.body, s);
    if (at.y() > from.set.at.y + 0.08) return std::nullopt;
    // Under the hip and a little before it, so that it is the knee that comes up.
    const double h = from.body->stature;
    Vec3 to = s[left ? Joint::LeftHip : Joint::RightHip] + 0.10 * h * waysOf(from, s).front;
    to.y() = from.set.at.y + 0.20 * h;
    return reached(from, {{foot, to}});
  }

  void addLegs() {
    const auto stands = [](const Stance& from) {
      return from.pose.support == "feet" || from.pose.support == "none";
    };
    add("stance wider", MoveKind::Legs, [this, stands](const Stance& from) -> Made {
      return stands(from) ? feetApart(from, 0.17) : std::nullopt;
    });
    add("stance narrower", MoveKind::Legs, [this, stands](const Stance& from) -> Made {
      return stands(from) ? feetApart(from, -0.11) : std::nullopt;
    });
    add("knees bent", MoveKind::Legs, [this](const Stance& from) -> Made {
      if (from.pose.support != "feet") return std::nullopt;
      const Vec3 hips = from.skeleton()[Joint::Pelvis];
      return reached(from, {{MovedPart::Pelvis, hips - Vec3(0, 0.07 * from.body->stature, 0)}});
    });
    add("right knee lifted", MoveKind::Legs,
        [this](const Stance& from) { return footUp(from, false); });
    add("left knee lifted", MoveKind::Legs,
        [this](const Stance& from) { return footUp(from, true); });
  }

  Made headMoved(const Stance& from, double up, double out, double front) const {
    const Skeleton s = from.skeleton();
    const Ways ways = waysOf(from, s);
    const double h = from.body->stature;
    return reached(
        from, {{MovedPart::Head, placeOf(MovedPart::Head, *from.body, s) +
                                     h * (up * ways.up + out * ways.right + front * ways.front)}});
  }

  /// The trunk turned on the hips; busy hands are brought back to what they hold.
  Made twisted(const Stance& from, double deg) const {
    const double own = from.set.poseMirrored ? -deg : deg;
    Stance turned = from;
    const TurnRange& most = limits_.of("back")[2];
    const double now = turned.pose.turnsDeg["waist"][2] + turned.pose.turnsDeg["chest"][2];
    if (now + own > most.most || now + own < most.least) return std::nullopt;
    turned.pose.turnsDeg["waist"][2] += 0.4 * own;
    turned.pose.turnsDeg["chest"][2] += 0.6 * own;
    const Skeleton s = from.skeleton();
    std::vector<ReachTarget> hands;
    for (const auto& [busy, hand] : {std::pair{from.leftBusy, MovedPart::LeftHand},
                                     std::pair{from.rightBusy, MovedPart::RightHand}})
      if (busy) hands.push_back({hand, placeOf(hand, *from.body, s)});
    if (hands.empty()) return turned;
    return reached(turned, std::move(hands));
  }

  void addTrunk() {
    add("leaning forward", MoveKind::Trunk,
        [this](const Stance& from) { return headMoved(from, -0.035, 0, 0.13); });
    add("leaning back", MoveKind::Trunk,
        [this](const Stance& from) { return headMoved(from, -0.01, 0, -0.075); });
    add("leaning to its left", MoveKind::Trunk,
        [this](const Stance& from) { return headMoved(from, -0.02, -0.10, 0); });
    add("leaning to its right", MoveKind::Trunk,
        [this](const Stance& from) { return headMoved(from, -0.02, 0.10, 0); });
    add("twisted to its left", MoveKind::Trunk,
        [this](const Stance& from) { return twisted(from, 26); });
    add("twisted to its right", MoveKind::Trunk,
        [this](const Stance& from) { return twisted(from, -26); });
  }

  void addTurns() {
    for (const double deg : {35.0, -35.0})
      add(deg > 0 ? "turned 35° to its left" : "turned 35° to its right", MoveKind::Turn,
          [deg](const Stance& from) -> Made {
            if (!from.touching.empty()) return std::nullopt;
            Stance out = from;
            out.set.headingDeg = std::remainder(out.set.headingDeg + deg, 360.0);
            return out;
          });
    add("flipped", MoveKind::Turn, [this](const Stance& from) -> Made {
      if (!from.touching.empty()) return std::nullopt;
      Stance out = from;
      out.set.poseMirrored = !from.set.poseMirrored;
      out.set.headingDeg = std::remainder(2 * sideDeg_ - from.set.headingDeg, 360.0);
      out.set.gazeDeg = -from.set.gazeDeg;
      std::swap(out.leftBusy, out.rightBusy);
      return out;
    });
  }

  void addHead() {
    for (const double deg : {35.0, -35.0})
      add(deg > 0 ? "head turned to its left" : "head turned to its right", MoveKind::Head,
          [deg](const Stance& from) -> Made {
            Stance out = from;
            const double sign = from.set.poseMirrored ? -1 : 1;
            const double posed =
                sign * (out.pose.turnsDeg["neck"][2] + out.pose.turnsDeg["head"][2]);
            const double now = posed + from.set.gazeDeg;
            if (std::abs(now + deg) > kMostGazeDeg) return std::nullopt;
            out.set.gazeDeg += deg;
            return out;
          });
    for (const double deg : {18.0, -16.0})
      add(deg > 0 ? "head bowed" : "chin raised", MoveKind::Head,
          [this, deg](const Stance& from) -> Made {
            Stance out = from;
            const double now = out.pose.turnsDeg["neck"][0] + out.pose.turnsDeg["head"][0] + deg;
            const TurnRange& range = limits_.of("neck")[0];
            if (now > range.most || now < range.least) return std::nullopt;
            out.pose.turnsDeg["neck"][0] += 0.6 * deg;
            out.pose.turnsDeg["head"][0] += 0.4 * deg;
            return out;
          });
  }

  const JointLimits& limits_;
  double sideDeg_;
  std::vector<PoseMove> moves_;
};

}  // namespace

std::vector<PoseMove> poseMoves(const JointLimits& limits, double sideDeg) {
  // The moves keep what they need of the list's maker, so it must live as long as they do.
  const auto maker = std::make_shared<Moves>(limits, sideDeg);
  std::vector<PoseMove> all = maker->all();
  for (PoseMove& move : all)
    move.made = [maker, made = std::move(move.made)](const Stance& from) { return made(from); };
  return all;
}

}  // namespace tw
