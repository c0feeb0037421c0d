// Blocking.
//
// Idea: actors are set as a director of a small stage would set them, in the beat's reading order
// from the side that is read first, and are then "cheated": moved a few centimetres across the
// line of sight so that no head hides another.
//
// Words. Slot: a place on the floor. Order: figures sorted by who speaks first, then by the beat.
// Opened: turned part of the way from the partner toward the audience, as stage actors do.
//
// 1. Slots for n figures and the placement number (pairs: opened, profile, staggered, over the
//    shoulder; more: arc, wedge, diagonal, ring). Moving relations stretch the distance.
// 2. Props: held ones wait for the hands; hauled ones lie before the hauler; looked-at ones
//    stand where they are looked at; the rest dress the floor.
// 3. Headings: toward the target, or the group, opened; gaze takes the remainder of the turn.
// 4. Cheat for the camera's side, pose, put held props to the hands.
// 5. Mirror everything when the picture runs leftward.
//
// Cost: a few microseconds, nearly all of it in posing. Does badly: crowds above about eight, and
// props that two figures handle from both ends. Distances are common practice, no source.
#include "stage/blocking.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "stage/held_props.h"
#include "stage/outdoor_set.h"
#include "stage/pair_pose.h"
#include "stage/prop_places.h"
#include "stage/set_pieces.h"
#include "stage/set_words.h"
#include "stage/shot_size.h"
#include "stage/slots.h"

namespace tw {
namespace {

constexpr double kDeg = std::numbers::pi / 180;
constexpr double kLeastAcrossM = 0.36;  // between heads, across the line of sight
constexpr double kMostGazeDeg = 65;
constexpr double kShouldersM = 0.62;  // what a pair of outer figures adds to their distance
constexpr double kStepBackM = 0.55;
constexpr double kAboardDepth = 0.4;  // a boat is narrow

double wrapped(double deg) {
  return std::remainder(deg, 360.0);
}

/// Heading of a figure without partner or target: three-quarter, into the reading direction.
double freeHeading(const Pose& pose, int placement) {
  if (pose.motion > 0.4) return placement == 1 ? 40 : 72;
  constexpr std::array<double, 4> kTurns{32, 68, 8, 148};
  return kTurns[static_cast<std::size_t>(placement) % kTurns.size()];
}

void markSpeakers(const Beat& beat, Scene& scene) {
  for (const std::string& who : speakersOf(beat))
    for (Actor& actor : scene.actors) actor.speaks |= actor.set.who == who;
}

class Blocking {
 public:
  Blocking(const StageRequest& request, const StagingChoice& choice, const Cast& cast,
           const PoseLibrary& poses)
      : beat_(*request.beat),
        choice_(choice),
        cast_(cast),
        poses_(poses),
        aspect_(request.aspect),
        aboard_(isAboard(*request.beat)) {
    setFocus(request.focus);
  }

  Scene run(bool leftward) {
    placeActors();
    takeInAskedHand(leftward);
    PropPlaces(beat_, choice_, aboard_, scene_).place();
    turnActors();
    gather();
    cheat();
    turnActors();
    bindPairs();
    PropPlaces(beat_, choice_, aboard_, scene_).turnBuilt();
    if (leftward) mirror();
    for (Actor& actor : scene_.actors) strike(actor);
    markSpeakers(beat_, scene_);
    putHeldProps(beat_, scene_);
    setSubject();
    return std::move(scene_);
  }

 private:
  void setFocus(const std::string& asked) {
    const int found = figureIndexOf(beat_, asked);
    scene_.focus = beat_.figures.empty() ? -1 : std::max(found, 0);
    scene_.handIsSubject = scene_.focus >= 0 && asksForHand(beat_);
  }

  void placeActors() {
    order_ = readingOrderOf(beat_);
    slots_ = slotsFor(beat_, order_, choice_.placement, scene_.focus);
    if (aboard_) {
      for (Vec3& at : slots_.at) at.z() *= kAboardDepth;
      slots_.opened *= 0.4;  // legs stay inside the hull
    }
    scene_.actors.resize(beat_.figures.size());
    for (std::size_t i = 0; i < order_.size(); ++i) {
      const BeatFigure& f = beat_.figures[static_cast<std::size_t>(order_[i])];
      Actor& actor = scene_.actors[static_cast<std::size_t>(order_[i])];
      actor.body = &cast_.of(f.who);
      actor.pose = &poses_.orStand(showsHandOnThing(beat_) ? "hold-up" : f.pose);
      actor.floor = floorFor(f, *actor.pose, i);
      const Vec3& at = slots_.at[i];
      actor.set = {f.who, actor.pose->name, false, {at.x(), actor.floor, at.z()}, 0, 0};
    }
  }

  /// Whose raised hand is not the one that a thing is to be in does the pose the other way round.
  void takeInAskedHand(bool leftward) {
    for (std::size_t i = 0; i < scene_.actors.size(); ++i) {
      Actor actor = scene_.actors[i];
      const auto isOwn = [&](const Prop& p) {
        return p.heldBy == actor.set.who && !p.hand.empty();
      };
      if (std::ranges::none_of(beat_.props, isOwn)) continue;
      actor.set.poseMirrored = leftward;
      strike(actor);
      if (!wantsOtherHand(beat_, actor)) continue;
      const Pose* other = poses_.find(actor.pose->name + std::string(kMirroredSuffix));
      if (other == nullptr) continue;
      scene_.actors[i].pose = other;
      scene_.actors[i].set.pose = other->name;
    }
  }

  double floorFor(const BeatFigure& f, const Pose& pose, std::size_t rank) const {
    const int prop = propIndexOf(beat_, f.target);
    const bool raised = has(f.relation, "lies on") || has(f.relation, "stands on");
    if (prop >= 0 && raised) {
      const Prop& p = beat_.props[static_cast<std::size_t>(prop)];
      if (p.sizeM[1] < 1.5 && !isVessel(p)) return p.sizeM[1];
    }
    const bool swims = pose.support == "none" && isUnderwater(beat_);
    if (swims) return swimHeight() + 0.35 * static_cast<double>(rank % 2);
    return aboard_ ? (has(pose.name, "sit") && pose.seat <= 0 ? 0.22 : 0.1) : 0.0;
  }

  /// Over the seabed; along a tower's wall high enough that the drop is felt.
  double swimHeight() const {
    const auto tower = towerIn(beat_);
    return tower && tower->near ? kTowerSwimM : 1.3;
  }

  Vec3 spot(int actor) const {
    const Place3& at = scene_.actors[static_cast<std::size_t>(actor)].set.at;
    return {at.x, at.y, at.z};
  }

  /// Where figure i looks, or nothing when it is alone with its thoughts.
  std::optional<Vec3> targetOf(int i) const {
    const BeatFigure& f = beat_.figures[static_cast<std::size_t>(i)];
    const int figure = figureIndexOf(beat_, f.target);
    if (figure >= 0 && figure != i) return spot(figure);
    const int prop = propIndexOf(beat_, f.target);
    if (prop >= 0 && beat_.props[static_cast<std::size_t>(prop)].heldBy.empty() &&
        !isVessel(beat_.props[static_cast<std::size_t>(prop)]) && !hauls(beat_, f)) {
      return scene_.propBoxes[static_cast<std::size_t>(prop)].middle();
    }
    if (has(f.relation, "point")) return std::nullopt;  // at something out of the picture
    return partnerOf(i);
  }

  /// A speaker looks at the next speaker, a listener at the first, anyone else at the focus.
  std::optional<Vec3> partnerOf(int i) const {
    if (scene_.actors.size() < 2) return std::nullopt;
    const auto speakers = speakersOf(beat_);
    for (const std::string& who : speakers) {
      const int other = figureIndexOf(beat_, who);
      if (other >= 0 && other != i) return spot(other);
    }
    if (scene_.focus != i) return spot(scene_.focus);
    return spot(order_[order_[0] == i ? 1 : 0]);
  }

  void turnActors() {
    for (std::size_t i = 0; i < scene_.actors.size(); ++i) turnActor(static_cast<int>(i));
  }

  void turnActor(int i) {
    Actor& actor = scene_.actors[static_cast<std::size_t>(i)];
    const BeatFigure& f = beat_.figures[static_cast<std::size_t>(i)];
    const auto target = targetOf(i);
    const double free = hauls(beat_, f) ? 58 : freeHeading(*actor.pose, choice_.placement);
    const Vec3 toward = target ? Vec3(*target - spot(i)) : Vec3::Zero();
    const bool onIt = std::hypot(toward.x(), toward.z()) < 0.2;
    const double away = turnsAway(f) ? 180 : 0;
    const double to = target && !onIt ? wrapped(headingOf(toward) + away) : free;
    const bool bound = target && (!f.relation.empty() || actor.pose->motion > 0.4);
    const double opened = !target ? 0 : bound ? std::min(slots_.opened, 0.12) : slots_.opened;
    const double limb = target ? limbHeading(actor, f) : 0;
    actor.set.headingDeg = shown(i, wrapped(to * (1 - opened) - limb));
    const double gaze =
        target ? std::clamp(wrapped(to - actor.set.headingDeg), -kMostGazeDeg, kMostGazeDeg) : 0;
    actor.set.gazeDeg = turnsAway(f) ? gaze : cheatedGaze(i, actor.set.headingDeg, gaze);
  }

  /// Faces are cheated toward the audience: the focus' to profile, the others' a little past it,
  /// except of who is shown over the shoulder. Never past where the body itself looks.
  double cheatedGaze(int i, double heading, double gaze) const {
    const bool isFocus = i == scene_.focus;
    if (!isFocus && choice_.placement == 3) return gaze;
    const double most =
        std::max(isFocus ? 84.0 : 100.0, std::abs(wrapped(heading - choice_.sideDeg)));
    const double face = wrapped(heading + gaze - choice_.sideDeg);
    return gaze + std::clamp(face, -most, most) - face;
  }

  /// Turned back far enough that the camera sees a face: the focus at least in profile, the others
  /// nearly; those whom the placement shows over the shoulder as they are.
  double shown(int i, double heading) const {
    const Pose& pose = *scene_.actors[static_cast<std::size_t>(i)].pose;
    const bool isFocus = i == scene_.focus;
    if (scene_.actors.size() < 2 || (!isFocus && choice_.placement == 3)) return heading;
    const bool bound = pose.motion > 0.4 || !pose.pointer.empty();
    const double most = bound ? 112 : isFocus ? 74 : 98;
    return wrapped(choice_.sideDeg + std::clamp(wrapped(heading - choice_.sideDeg), -most, most));
  }

  /// For who points: the arm's own direction in the body, so that the arm goes to the target.
  double limbHeading(const Actor& actor, const BeatFigure& f) const {
    if (!has(f.relation, "point") || actor.pose->pointer.empty()) return 0;
    const Skeleton s = posed(*actor.body, *actor.pose, SetFigure{});
    const Vec3 limb = pointingLimb(*actor.pose, s, false);
    return std::clamp(headingOf(Vec3(limb.x(), 0, limb.z())), -80.0, 80.0);
  }

  /// In a frame too narrow for the distance the figures close up across the line of sight and
  /// step apart along it: nearer to each other than people stand, as the trade cheats it.
  void gather() {
    if (order_.size() < 2 || choice_.shot < ShotSize::Medium) return;
    const double side = choice_.sideDeg * kDeg;
    const Vec3 right(std::cos(side), 0, std::sin(side)), away(-std::sin(side), 0, std::cos(side));
    double low = 1e9, high = -1e9;
    for (const int i : order_) {
      low = std::min(low, spot(i).dot(right));
      high = std::max(high, spot(i).dot(right));
    }
    const double ratio = std::sqrt(ratioFor(choice_.shot, 0.1) * leastRatio(choice_.shot));
    const double frame = 0.88 * scene_.actors[0].body->stature / ratio * aspect_;
    const double room =
        std::max(frame - kShouldersM, kLeastAcrossM * static_cast<double>(order_.size() - 1));
    if (high - low <= room) return;
    const double k = room / (high - low);
    for (std::size_t rank = 0; rank < order_.size(); ++rank) {
      Place3& at = scene_.actors[static_cast<std::size_t>(order_[rank])].set.at;
      const double now = at.x * right.x() + at.z * right.z();
      const double deeper =
          k < 0.7 && order_[rank] != scene_.focus ? kStepBackM * depthSign(rank) : 0;
      const Vec3 by = right * (k * now - now) + away * deeper;
      at.x += by.x();
      at.z += by.z();
    }
  }

  /// Over the shoulder the others are nearer, in all other placements the focus is.
  double depthSign(std::size_t rank) const {
    const double more = 0.6 + 0.4 * static_cast<double>(rank % 3);
    return choice_.placement == 3 ? -0.5 : more;
  }

  /// Heads that would hide each other are moved apart across the line of sight.
  void cheat() {
    const double side = choice_.sideDeg * kDeg;
    const Vec3 right(std::cos(side), 0, std::sin(side));
    for (std::size_t k = 1; k < order_.size(); ++k) {
      for (std::size_t m = 0; m < k; ++m) cheatPair(order_[m], order_[k], right);
    }
  }

  void cheatPair(int first, int second, const Vec3& right) {
    const double apart = (spot(second) - spot(first)).dot(right);
    if (std::abs(apart) >= kLeastAcrossM) return;
    const double sign = std::abs(apart) < 0.05 ? 1 : std::copysign(1.0, apart);
    const Vec3 by = right * (sign * kLeastAcrossM - apart);
    const bool moveFirst = second == scene_.focus;
    Place3& at = scene_.actors[static_cast<std::size_t>(moveFirst ? first : second)].set.at;
    const double k = moveFirst ? -1 : 1;
    at.x += k * by.x();
    at.z += k * by.z();
  }

  /// Who carries, holds or leads somebody stands with him as the pose for two says.
  void bindPairs() {
    std::map<std::string, double> statures;
    for (const Actor& actor : scene_.actors) statures[actor.set.who] = actor.body->stature;
    std::vector<bool> bound(scene_.actors.size(), false);
    for (int i = 0; i < static_cast<int>(scene_.actors.size()); ++i) {
      const auto found = pairIn(beat_, i, poses_, statures);
      if (!found) continue;
      const auto first = static_cast<std::size_t>(found->first);
      const auto second = static_cast<std::size_t>(found->second);
      if (bound[first] || bound[second]) continue;
      bound[first] = bound[second] = true;
      if (scene_.focus == found->first) scene_.partner = found->second;
      if (scene_.focus == found->second) scene_.partner = found->first;
      bind(*found->pair, scene_.actors[first], scene_.actors[second]);
    }
  }

  /// Where the two stood before, the middle between them stays.
  void bind(const PairPose& pair, Actor& first, Actor& second) {
    constexpr std::array<double, 4> kTurns{0, 24, -20, 8};
    const auto turn = kTurns[static_cast<std::size_t>(choice_.placement) % kTurns.size()];
    SetFigure start = first.set;
    start.headingDeg = wrapped(pair.viewDeg + turn + 0.5 * choice_.sideDeg);
    auto sets = paired(pair, *first.body, *second.body, start);
    sets[1].who = second.set.who;
    const double x = (first.set.at.x + second.set.at.x - sets[0].at.x - sets[1].at.x) / 2;
    const double z = (first.set.at.z + second.set.at.z - sets[0].at.z - sets[1].at.z) / 2;
    for (SetFigure& set : sets) set.at = {set.at.x + x, set.at.y, set.at.z + z};
    first.set = sets[0];
    second.set = sets[1];
    first.pose = &poses_.orStand(first.set.pose);
    second.pose = &poses_.orStand(second.set.pose);
    second.floor = second.set.at.y;
  }

  void mirror() {
    for (Actor& actor : scene_.actors) {
      actor.set.at.x = -actor.set.at.x;
      actor.set.headingDeg = -actor.set.headingDeg;
      actor.set.gazeDeg = -actor.set.gazeDeg;
      actor.set.poseMirrored = true;
    }
    for (std::size_t i = 0; i < scene_.props.size(); ++i) {
      scene_.props[i].at.x = -scene_.props[i].at.x;
      scene_.props[i].headingDeg = -scene_.props[i].headingDeg;
      Box3& box = scene_.propBoxes[i];
      box = {{-box.max.x(), box.min.y(), box.min.z()}, {-box.min.x(), box.max.y(), box.max.z()}};
    }
  }

  static void strike(Actor& actor) {
    actor.skeleton = posed(*actor.body, *actor.pose, actor.set);
    actor.volumes = volumesOf(*actor.body, actor.skeleton);
  }

  void setSubject() {
    if (!scene_.actors.empty()) return;
    scene_.subject = mainThingOf(beat_, scene_);
  }

  const Beat& beat_;
  const StagingChoice& choice_;
  const Cast& cast_;
  const PoseLibrary& poses_;
  double aspect_;
  bool aboard_;
  Scene scene_;
  std::vector<int> order_;
  Slots slots_;
};

}  // namespace

std::array<Vec3, 8> Box3::corners() const {
  std::array<Vec3, 8> all;
  for (std::size_t i = 0; i < 8; ++i) {
    all[i] = {i & 1 ? max.x() : min.x(), i & 2 ? max.y() : min.y(), i & 4 ? max.z() : min.z()};
  }
  return all;
}

const Body& Cast::of(const std::string& who) const {
  const auto found = bodies.find(who);
  return found == bodies.end() ? stranger : found->second;
}

int placementsFor(const Beat& beat) {
  return beat.figures.empty() ? 1 : beat.figures.size() == 1 ? 3 : 4;
}

bool runsLeftward(const StageRequest& request, const StagingChoice& choice) {
  return choice.mirrored != (request.direction == ReadingDirection::RightToLeft);
}

bool runsLeftward(const Staging& staging) {
  if (staging.choice.sideDeg != 0) return staging.camera.panDeg * staging.choice.sideDeg > 0;
  return staging.choice.mirrored;
}

Scene blocked(const StageRequest& request, const StagingChoice& choice, const Cast& cast,
              const PoseLibrary& poses) {
  return Blocking(request, choice, cast, poses).run(runsLeftward(request, choice));
}

Scene sceneOf(const Staging& staging, const Beat& beat, const std::string& focus, const Cast& cast,
              const PoseLibrary& poses) {
  Scene scene;
  const int asked = figureIndexOf(beat, focus);
  for (const SetFigure& set : staging.figures) {
    Actor actor{set, &cast.of(set.who), &poses.orStand(set.pose), {}, {}, set.at.y, false};
    actor.skeleton = posed(*actor.body, *actor.pose, set);
    actor.volumes = volumesOf(*actor.body, actor.skeleton);
    scene.actors.push_back(std::move(actor));
  }
  scene.focus = scene.actors.empty() ? -1 : std::max(asked, 0);
  scene.handIsSubject = scene.focus >= 0 && asksForHand(beat);
  markSpeakers(beat, scene);
  scene.props = staging.props;
  for (const SetProp& set : staging.props) {
    const int i = propIndexOf(beat, set.prop);
    const bool held = i >= 0 && isInHand(beat, static_cast<std::size_t>(i));
    scene.propBoxes.push_back(
        i < 0 ? Box3{} : boxAround(beat.props[static_cast<std::size_t>(i)], set, held));
    scene.propMatters.push_back(held);
  }
  if (scene.actors.empty()) scene.subject = mainThingOf(beat, scene);
  return scene;
}

Vec3 directionOf(double headingDeg) {
  return {std::sin(headingDeg * kDeg), 0, -std::cos(headingDeg * kDeg)};
}
double headingOf(const Vec3& direction) {
  return std::atan2(direction.x(), -direction.z()) / kDeg;
}

std::vector<std::string> speakersOf(const Beat& beat) {
  std::vector<std::string> speakers;
  for (const CopyItem& item : beat.copy) {
    const bool spoken = item.kind == CopyKind::Speech || item.kind == CopyKind::Whisper ||
                        item.kind == CopyKind::Shout || item.kind == CopyKind::Thought;
    if (!spoken || item.offPanel || item.speaker.empty()) continue;
    if (std::find(speakers.begin(), speakers.end(), item.speaker) == speakers.end()) {
      speakers.push_back(item.speaker);
    }
  }
  return speakers;
}

bool isUnderwater(const Beat& beat) {
  return has(beat.setting, "underwater");
}

}  // namespace tw
