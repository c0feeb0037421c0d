#include "stage/prop_places.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "stage/held_props.h"
#include "stage/prop_mesh.h"
#include "stage/set_pieces.h"
#include "stage/set_words.h"
#include "stage/slots.h"

namespace tw {
namespace {

double wrapped(double deg) {
  return std::remainder(deg, 360.0);
}

}  // namespace

void PropPlaces::place() {
  scene_.props.resize(beat_.props.size());
  scene_.propBoxes.resize(beat_.props.size());
  scene_.propMatters.assign(beat_.props.size(), false);
  double dressing = 0;
  for (std::size_t i = 0; i < beat_.props.size(); ++i) {
    SetProp& set = scene_.props[i];
    set.prop = beat_.props[i].id;
    const int user = userOf(i);
    scene_.propMatters[i] = user >= 0 && !isBuilt(beat_.props[i]);
    const Vec3 at = placeOf(i, user, dressing);
    set.at = {at.x(), at.y(), at.z()};
    if (showsThingClose(beat_) && !beat_.props[i].placeM) layClose(i, set);
    if (isFallen(beat_, beat_.props[i])) {
      set.pitchDeg = lyingPitch(beat_.props[i]);
      set.headingDeg = 62;  // seen from the side, a little from its foot
    }
    if (beat_.props[i].turnDeg) set.headingDeg = *beat_.props[i].turnDeg;
    scene_.propBoxes[i] = boxAround(beat_.props[i], set, false);
  }
}

void PropPlaces::turnBuilt() {
  for (std::size_t i = 0; i < beat_.props.size(); ++i) {
    if (!isBuilt(beat_.props[i]) || beat_.props[i].turnDeg || beat_.props[i].placeM) continue;
    SetProp& set = scene_.props[i];
    if (const auto passer = passerOf(beat_, i)) {
      putAround(scene_.actors[*passer], i);
      continue;
    }
    if (const int user = userOf(i); user >= 0) {
      const Vec3 to = spot(user) - Vec3(set.at.x, set.at.y, set.at.z);
      if (std::hypot(to.x(), to.z()) > 0.2) set.headingDeg = headingOf(to);
    }
    scene_.propBoxes[i] = boxAround(beat_.props[i], set, false);
  }
}

/// Where the artist says, else beside who uses it, else where it dresses the floor.
Vec3 PropPlaces::placeOf(std::size_t prop, int user, double& dressing) const {
  const auto& said = beat_.props[prop].placeM;
  if (said) return {(*said)[0], (*said)[1], (*said)[2]};
  if (const auto passer = passerOf(beat_, prop)) return spot(static_cast<int>(*passer));
  return user >= 0 ? besideUser(prop, user) : dressingPlace(prop, dressing++);
}

/// Things of one close-up are together; a small one is raised to the long one it is with, a
/// blade laid across it.
void PropPlaces::layClose(std::size_t prop, SetProp& set) const {
  const auto isLong = [](const Prop& p) { return p.sizeM[1] > 1.2; };
  const Prop& thing = beat_.props[prop];
  const bool beside = !isLong(thing) && std::any_of(beat_.props.begin(), beat_.props.end(), isLong);
  const bool across = beside && isRod(thing);
  const double next = isLong(thing) ? 0 : 0.25 * static_cast<double>(prop);
  set.at = {across ? -0.086 : next, beside ? 1.2 : 0.0, across ? -0.1 : 0.0};
  if (across) set.headingDeg = 90, set.pitchDeg = 35;
}

/// The figure whose relation is to the prop, or −1.
int PropPlaces::userOf(std::size_t prop) const {
  for (std::size_t i = 0; i < beat_.figures.size(); ++i) {
    if (beat_.figures[i].target == beat_.props[prop].id) return static_cast<int>(i);
  }
  return -1;
}

Vec3 PropPlaces::besideUser(std::size_t prop, int user) const {
  const Prop& p = beat_.props[prop];
  const BeatFigure& f = beat_.figures[static_cast<std::size_t>(user)];
  const Vec3 from = spot(user);
  if (isVessel(p)) return vesselPlace(p);
  const Vec3 floor(from.x(), heightOver(p), from.z());
  if (restsOn(f)) return floor;
  const double half = isBuilt(p) ? p.sizeM[2] / 2 : std::min(p.sizeM[0], p.sizeM[2]) / 2;
  const double away = half + (touches(f) ? 0.48 : 0.85);
  return floor + directionOf(propHeading(p, from)) * away;
}

/// Toward the picture's side and a little to the audience; tall things go behind.
double PropPlaces::propHeading(const Prop& p, const Vec3& from) const {
  constexpr std::array<double, 4> kTurns{64, 84, 48, 110};
  double turn = kTurns[static_cast<std::size_t>(choice_.placement) % kTurns.size()];
  const bool tall = p.sizeM[1] > 1.1;
  if (tall) turn = 102;
  if (scene_.actors.size() < 2) return turn;
  const double turnInGroup = tall ? 140 : 40;  // past the partner, not through him
  return from.x() > 0 ? -turnInGroup : turnInGroup;
}

/// Bells hang unless they have fallen; everything else stands.
double PropPlaces::heightOver(const Prop& p) const {
  if (isFallen(beat_, p)) return 0;
  return has(p.name, "bell") && p.sizeM[1] > 0.6 ? 1.25 : 0;
}

Vec3 PropPlaces::dressingPlace(std::size_t prop, double rank) const {
  const Prop& p = beat_.props[prop];
  if (isVessel(p)) return vesselPlace(p);
  if (beat_.figures.empty()) return {rank * (0.4 + p.sizeM[0]), heightOver(p), 0.6 * rank};
  if (isBuilt(p)) return backPlace(p, rank);
  const double side = std::fmod(rank, 2) < 1 ? 1 : -1;
  const double halfGroup = 0.6 * static_cast<double>(beat_.figures.size());
  return {side * (halfGroup + 0.3 + 0.5 * p.sizeM[0]), heightOver(p), 0.7 + 0.5 * p.sizeM[2]};
}

/// Indoors against the back wall, outdoors well behind; a window at the height of a sill.
Vec3 PropPlaces::backPlace(const Prop& p, double rank) const {
  const double side = std::fmod(rank, 2) < 1 ? 1 : -1;
  const bool indoors = isIndoors(beat_);
  const double halfGroup = 0.45 * static_cast<double>(beat_.figures.size());
  const double sill = p.shape == "window" ? 0.95 : 0;
  const double away = indoors ? roomDepth(beat_) - p.sizeM[2] / 2 - 0.05 : 2.4 + p.sizeM[2] / 2;
  return {side * (halfGroup + 0.35 + 0.5 * p.sizeM[0]), sill, away};
}

/// Across the way of who passes, but turned so far to the camera that the opening is seen.
void PropPlaces::putAround(const Actor& actor, std::size_t prop) {
  constexpr double kMostTurnDeg = 36;
  SetProp& set = scene_.props[prop];
  set.at = {actor.set.at.x, 0, actor.set.at.z};
  set.headingDeg =
      wrapped(choice_.sideDeg + std::clamp(wrapped(actor.set.headingDeg - choice_.sideDeg),
                                           -kMostTurnDeg, kMostTurnDeg));
  const Opening o = passageOpening(beat_, beat_.props[prop], actor.floor);
  const Vec3 at(set.at.x, 0, set.at.z), half(o.width / 2, 0, o.width / 2);
  scene_.propBoxes[prop] = {at - half + Vec3(0, o.sill, 0),
                            at + half + Vec3(0, o.sill + o.height, 0)};
  scene_.propMatters[prop] = true;
}

Vec3 PropPlaces::vesselPlace(const Prop& p) const {
  const bool afar = beat_.figures.empty() || !aboard_;
  return {0, 0, afar ? 0.6 + p.sizeM[2] : 0.1};
}

Vec3 PropPlaces::spot(int actor) const {
  const Place3& at = scene_.actors[static_cast<std::size_t>(actor)].set.at;
  return {at.x, at.y, at.z};
}

}  // namespace tw
