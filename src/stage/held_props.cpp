#include "stage/held_props.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "stage/set_pieces.h"
#include "stage/tied_things.h"

namespace tw {
namespace {

constexpr double kDeg = std::numbers::pi / 180;
constexpr double kLongestHauledM = 3.2;
constexpr std::string_view kLeftHand = "left", kRightHand = "right", kBothHands = "both";

bool names(const std::string& text, std::initializer_list<std::string_view> words) {
  return std::any_of(words.begin(), words.end(),
                     [&](std::string_view word) { return text.find(word) != std::string::npos; });
}

std::string lower(std::string text) {
  for (char& c : text) c = static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
  return text;
}

bool hangs(const Prop& prop) {
  return names(lower(prop.name), {"lantern", "lamp", "bag", "bucket", "bell", "basket", "satchel",
                                  "kettle", "cage", "suitcase", "sack"});
}

Vec3 palm(const Skeleton& s, bool left) {
  const Vec3& wrist = s[left ? Joint::LeftWrist : Joint::RightWrist];
  return wrist + 0.6 * (s[left ? Joint::LeftFingertip : Joint::RightFingertip] - wrist);
}

Vec3 forearm(const Skeleton& s, bool left) {
  return (s[left ? Joint::LeftWrist : Joint::RightWrist] -
          s[left ? Joint::LeftElbow : Joint::RightElbow])
      .normalized();
}

/// The hand that the pose offers: the one it points with, else the one that is raised more.
bool offersLeft(const Actor& actor) {
  const Pose& pose = *actor.pose;
  if (!pose.pointer.empty()) {
    const bool left = lower(pose.pointer).find("left") != std::string::npos;
    return left != actor.set.poseMirrored;
  }
  const double up = palm(actor.skeleton, true).y() - palm(actor.skeleton, false).y();
  return std::abs(up) < 0.08 ? actor.set.poseMirrored : up > 0;
}

struct Grip {
  Vec3 at, along;
  bool both = false;
};

Grip gripOf(const Actor& actor, std::string_view hand = {}) {
  const Skeleton& s = actor.skeleton;
  const Vec3 l = palm(s, true), r = palm(s, false);
  const Vec3 front = bodyFront(s);
  const bool bothForward =
      (l - s[Joint::Chest]).dot(front) > 0.12 && (r - s[Joint::Chest]).dot(front) > 0.12;
  const bool both = hand.empty() ? (l - r).norm() < 0.55 && bothForward : hand == kBothHands;
  if (both) return {(l + r) / 2, (r - l).normalized(), true};
  const bool left = hand.empty() ? offersLeft(actor) : hand == kLeftHand;
  return {left ? l : r, forearm(s, left), false};
}

void aim(SetProp& set, const Vec3& top, const Vec3& middle) {
  set.headingDeg = headingOf(top);
  set.pitchDeg = std::acos(std::clamp(top.normalized().y(), -1.0, 1.0)) / kDeg;
  set.at = {middle.x(), middle.y(), middle.z()};
}

void haul(const Actor& actor, const Prop& prop, SetProp& set) {
  const Vec3 hands = haulingHands(actor);
  const Vec3 front = directionOf(actor.set.headingDeg);
  const double length = std::min(handledSize(prop)[0], kLongestHauledM);
  const double drop = std::min(hands.y() - actor.floor - 0.05, 0.9 * length);
  const double run = std::sqrt(std::max(length * length - drop * drop, 0.0));
  const Vec3 top = (front * run - Vec3(0, drop, 0)).normalized();
  aim(set, top, hands + top * (length / 2 - 0.12));
}

void hold(const Actor& actor, const Prop& prop, std::string_view hand, SetProp& set) {
  const Grip grip = gripOf(actor, hand);
  const std::array<double, 3> size = handledSize(prop);
  const Vec3 up(0, 1, 0);
  if (hangs(prop)) {
    aim(set, up, grip.at - up * (prop.sizeM[1] / 2 + 0.02));
  } else if (isRod(prop)) {
    const Vec3 front = bodyFront(actor.skeleton);
    const Vec3 top = grip.both ? (up + 0.5 * front).normalized()
                               : (grip.along + 0.7 * up + 0.3 * front).normalized();
    const double beyond = size[0] > 1.2 ? 0.1 : 0.38;
    aim(set, top, grip.at + top * (size[0] * beyond));
  } else {
    const Vec3 out = grip.both ? bodyFront(actor.skeleton) * (prop.sizeM[2] / 2)
                               : Vec3(up * (prop.sizeM[1] / 2 - 0.03));
    aim(set, up, grip.at + out);
  }
  if (hangs(prop) || !isRod(prop)) set.headingDeg = actor.set.headingDeg;
}

/// Seen from the front the hand closes over the thing, not the thing over the hand.
void moveBehindHand(const Actor& actor, SetProp& set) {
  constexpr double kBehindM = 0.085;
  const Vec3 front = bodyFront(actor.skeleton);
  set.at = {set.at.x - kBehindM * front.x(), set.at.y, set.at.z - kBehindM * front.z()};
}

int holderOf(const Beat& beat, std::size_t prop) {
  if (beat.props[prop].placeM) return -1;
  for (std::size_t i = 0; i < beat.figures.size(); ++i) {
    const BeatFigure& f = beat.figures[i];
    if (beat.props[prop].heldBy == f.who && !f.who.empty()) return static_cast<int>(i);
    if (f.target == beat.props[prop].id && hauls(beat, f)) return static_cast<int>(i);
  }
  // "Her glove on the chain": the thing that is named with the hand is in it.
  return showsHandOnThing(beat) && prop == 0 ? 0 : -1;
}

/// The hand for a thing: the one it says; else the one the pose offers to the first thing and the
/// other one to the next. Empty: as the pose has it.
std::string_view handFor(const Beat& beat, std::size_t prop, const Actor& actor) {
  const std::string& asked = beat.props[prop].hand;
  if (asked == kLeftHand || asked == kRightHand || asked == kBothHands) return asked;
  const int holder = holderOf(beat, prop);
  for (std::size_t i = 0; i < beat.props.size(); ++i) {
    const std::string& taken = beat.props[i].hand;
    if (i == prop || holderOf(beat, i) != holder) continue;
    if (taken == kLeftHand) return kRightHand;
    if (taken == kRightHand) return kLeftHand;
    if (taken.empty() && i < prop) return offersLeft(actor) ? kRightHand : kLeftHand;
    if (taken.empty() && i > prop) return offersLeft(actor) ? kLeftHand : kRightHand;
  }
  return {};
}

}  // namespace

bool isVessel(const Prop& prop) {
  const std::string name = lower(prop.name);
  return prop.heldBy.empty() && prop.sizeM[0] + prop.sizeM[2] > 2 &&
         names(name, {"boat", "raft", "dinghy", "skiff", "launch", "canoe", "barge", "punt"});
}

bool isRod(const Prop& prop) {
  const std::array<double, 3> s = handledSize(prop);
  return s[0] > 3 * std::max(s[1], s[2]);
}

bool hauls(const Beat& beat, const BeatFigure& f) {
  if (!names(f.relation, {"haul", "pull", "drag", "tow", "heave", "tug"})) return false;
  return std::any_of(beat.props.begin(), beat.props.end(), [&](const Prop& prop) {
    return prop.id == f.target && isRod(prop) && handledSize(prop)[0] > 1.2;
  });
}

bool isHauledBy(const BeatFigure& figure, std::size_t prop, const Beat& beat) {
  return figure.target == beat.props[prop].id && hauls(beat, figure);
}

Vec3 haulingHands(const Actor& actor) {
  return (palm(actor.skeleton, true) + palm(actor.skeleton, false)) / 2;
}

BusyHands busyHands(const Beat& beat, const Scene& scene, std::size_t figure) {
  BusyHands busy;
  const Actor& actor = scene.actors[figure];
  for (std::size_t i = 0; i < beat.props.size(); ++i) {
    if (holderOf(beat, i) != static_cast<int>(figure)) continue;
    const std::string_view hand = handFor(beat, i, actor);
    const bool both = hauls(beat, beat.figures[figure]) || gripOf(actor, hand).both;
    const bool left = hand.empty() ? offersLeft(actor) : hand == kLeftHand;
    busy.left |= both || left;
    busy.right |= both || !left;
  }
  return busy;
}

void carryProps(const Beat& beat, std::size_t figure, const Scene& before, Scene& after) {
  const SetFigure &was = before.actors[figure].set, &is = after.actors[figure].set;
  const bool glass = was.poseMirrored != is.poseMirrored;
  const BusyHands busy = busyHands(beat, before, figure);
  const auto hands = [&](const Scene& scene, bool left, bool right) -> Vec3 {
    const Skeleton& s = scene.actors[figure].skeleton;
    if (left && right) return 0.5 * (palm(s, true) + palm(s, false));
    return palm(s, left);
  };
  const Vec3 from = hands(before, busy.left, busy.right);
  const Vec3 to = glass ? hands(after, busy.right, busy.left) : hands(after, busy.left, busy.right);
  const auto turned = [&](double heading) {
    return glass ? was.headingDeg + is.headingDeg - heading
                 : heading + is.headingDeg - was.headingDeg;
  };
  for (SetProp& prop : after.props)
    for (std::size_t i = 0; i < beat.props.size(); ++i) {
      if (beat.props[i].id != prop.prop || holderOf(beat, i) != static_cast<int>(figure)) continue;
      if (isHauledBy(beat.figures[figure], i, beat)) {
        stringAnew(beat.props[i], haulingHands(after.actors[figure]), prop);
        continue;
      }
      const Vec3 off = Vec3(prop.at.x, prop.at.y, prop.at.z) - from;
      const Vec3 now = to + directionOf(turned(headingOf(off))) * std::hypot(off.x(), off.z()) +
                       Vec3(0, off.y(), 0);
      prop.at = {now.x(), now.y(), now.z()};
      prop.headingDeg = std::remainder(turned(prop.headingDeg), 360.0);
    }
}

Vec3 workingPalm(const Actor& actor) {
  const Grip grip = gripOf(actor);
  return grip.at;
}

bool asksForHand(const Beat& beat) {
  if (!beat.shot || *beat.shot > ShotSize::CloseUp) return false;
  const std::string words = lower(beat.description);
  return names(words, {"hand", "finger", "fist", "palm", "glove"}) &&
         !names(words, {"face", "eyes"});
}

bool showsHandOnThing(const Beat& beat) {
  return asksForHand(beat) && beat.figures.size() == 1 && !beat.props.empty() &&
         beat.props[0].heldBy.empty() && beat.figures[0].target.empty() &&
         !isVessel(beat.props[0]) && handledSize(beat.props[0])[1] < 0.3;
}

bool showsThingClose(const Beat& beat) {
  if (!beat.figures.empty() || beat.props.empty()) return false;
  if (beat.shot) return *beat.shot <= ShotSize::CloseUp;
  return std::all_of(beat.props.begin(), beat.props.end(),
                     [](const Prop& prop) { return handledSize(prop)[1] < 0.4; });
}

bool wantsOtherHand(const Beat& beat, const Actor& actor) {
  for (const Prop& prop : beat.props) {
    const bool one = prop.hand == kLeftHand || prop.hand == kRightHand;
    if (one && prop.heldBy == actor.set.who && !prop.placeM)
      return (prop.hand == kLeftHand) != offersLeft(actor);
  }
  return false;
}

bool isInHand(const Beat& beat, std::size_t prop) {
  return holderOf(beat, prop) >= 0;
}

double lyingPitch(const Prop& prop) {
  constexpr double kBellDeg = 107;  // on its rim and its shoulder; from the bell's own outline
  return names(lower(prop.name), {"bell"}) ? kBellDeg : 90;
}

std::array<double, 3> handledSize(const Prop& prop) {
  std::array<double, 3> s = prop.sizeM;
  std::sort(s.begin(), s.end(), std::greater<>());
  return s;
}

Vec3 topDirection(const SetProp& set) {
  return Vec3(0, std::cos(set.pitchDeg * kDeg), 0) +
         directionOf(set.headingDeg) * std::sin(set.pitchDeg * kDeg);
}

double drawnLength(const Prop& prop, const SetProp& set) {
  if (set.lengthM > 0) return set.lengthM;
  return isRod(prop) ? std::min(handledSize(prop)[0], kLongestHauledM) : prop.sizeM[1];
}

Box3 boxAround(const Prop& prop, const SetProp& set, bool inHand) {
  const Vec3 at(set.at.x, set.at.y, set.at.z);
  if (!inHand) {
    double wide = std::max(prop.sizeM[0], prop.sizeM[2]) / 2;
    if (set.pitchDeg > 60) {  // lies
      const Vec3 middle = at + directionOf(set.headingDeg) * (prop.sizeM[1] / 2);
      const double half = std::max(wide, prop.sizeM[1] / 2);
      return {middle - Vec3(half, 0, half), middle + Vec3(half, 2 * wide, half)};
    }
    return {at - Vec3(wide, 0, wide), at + Vec3(wide, prop.sizeM[1], wide)};
  }
  const std::array<double, 3> s = handledSize(prop);
  const double wide = isRod(prop) ? s[1] / 2 : std::max(prop.sizeM[0], prop.sizeM[2]) / 2;
  const Vec3 half =
      (topDirection(set) * (drawnLength(prop, set) / 2)).cwiseAbs() + Vec3::Constant(wide);
  return {at - half, at + half};
}

void putHeldProps(const Beat& beat, Scene& scene) {
  for (std::size_t i = 0; i < beat.props.size(); ++i) {
    const int holder = holderOf(beat, i);
    if (holder < 0) continue;
    const Actor& actor = scene.actors[static_cast<std::size_t>(holder)];
    const bool hauled = hauls(beat, beat.figures[static_cast<std::size_t>(holder)]);
    if (hauled) {
      haul(actor, beat.props[i], scene.props[i]);
      tautTo(beat, i, haulingHands(actor), actor.set.headingDeg, actor.floor, scene);
    } else {
      hold(actor, beat.props[i], handFor(beat, i, actor), scene.props[i]);
      if (showsHandOnThing(beat)) moveBehindHand(actor, scene.props[i]);
    }
    scene.propBoxes[i] = boxAround(beat.props[i], scene.props[i], true);
    scene.propMatters[i] = true;
  }
}

Vec3 pointingLimb(const Pose& pose, const Skeleton& s, bool isMirrored) {
  const std::string name = lower(pose.pointer);
  const bool left = (name.find("left") != std::string::npos) != isMirrored;
  if (names(name, {"ankle", "knee", "toe", "foot"})) {
    return (s[left ? Joint::LeftToe : Joint::RightToe] - s[left ? Joint::LeftHip : Joint::RightHip])
        .normalized();
  }
  return (s[left ? Joint::LeftFingertip : Joint::RightFingertip] -
          s[left ? Joint::LeftShoulder : Joint::RightShoulder])
      .normalized();
}

namespace {

/// Of what is long a close-up shows a piece, about as much as a hand could take.
Box3 closePart(Box3 box) {
  constexpr double kPieceM = 0.55, kRoom = 0.35;
  const double high = box.max.y() - box.min.y();
  if (high <= 2 * kPieceM) {
    box.min.y() -= kRoom * high;
    box.max.y() += kRoom * high;
    return box;
  }
  const double middle = 0.45 * (box.min.y() + box.max.y());
  box.min.y() = middle - kPieceM / 2;
  box.max.y() = middle + kPieceM / 2;
  return box;
}

}  // namespace

Box3 mainThingOf(const Beat& beat, const Scene& scene) {
  if (showsThingClose(beat)) return closePart(scene.propBoxes[0]);
  double most = 0;
  Box3 best = mainSetBox(beat);
  for (std::size_t i = 0; i < beat.props.size(); ++i) {
    const auto& s = beat.props[i].sizeM;
    if (s[0] * s[1] * s[2] <= most) continue;
    most = s[0] * s[1] * s[2];
    best = scene.propBoxes[i];
  }
  return best;
}

}  // namespace tw
