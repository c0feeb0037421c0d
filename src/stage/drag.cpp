// Dragging.
//
// 1. The page point and the handle's place give a place in the space: in the plane through it that
//    faces the camera (parts of a body), on a ball around the head (gaze), on the level plane at
//    the height of its foot (figures, things).
// 2. Parts of a body go to reachPose; its turns are stored as what differs from the named pose. A
//    thing in both hands takes both along, by whichever it is dragged.
// 3. The gaze turns head and neck alone (turn_head.h).
// 4. What the figure holds is carried by its hands; of a line that it hauls the far end stays, so
//    dragged by its middle the hands go twice the way. What nobody holds stays.
//
// Cost: one reachPose, and two scenes when something is held. Does badly: the level plane seen
// nearly edge on makes a small way of the pen a large one; beyond kFarthestM figures stay.
#include "stage/drag.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "stage/held_props.h"
#include "stage/tied_things.h"
#include "stage/turn_head.h"

namespace tw {
namespace {

constexpr double kFarthestM = 80;      // from the eye: where the ground ends for a drag
constexpr double kDeg = 57.295779513;  // per radian
constexpr double kShortM = 0.005;
constexpr double kOffGazeDeg = 0.5;

Vec3 vec(const Place3& p) {
  return {p.x, p.y, p.z};
}
Place3 place(const Vec3& v) {
  return {v.x(), v.y(), v.z()};
}

Vec3 forwardOf(const Camera& camera) {
  return camera.rotation().row(2).transpose();
}
/// Level, away from the eye.
Vec3 levelForward(const Camera& camera) {
  const Vec3 forward = forwardOf(camera);
  const Vec3 level(forward.x(), 0, forward.z());
  if (level.norm() > 1e-6) return level.normalized();
  const Vec3 down = camera.rotation().row(1).transpose();  // looks straight down or up
  return Vec3(-down.x(), 0, -down.z()).normalized();
}

bool holdsSomething(const Beat& beat, const Staging& staging, int figure) {
  for (std::size_t i = 0; i < staging.props.size(); ++i)
    if (holderOfThing(beat, staging, i) == figure) return true;
  return false;
}

std::vector<Joint> pinsOf(const std::vector<Pin>& pins, int figure) {
  std::vector<Joint> out;
  for (const Pin& pin : pins)
    if (pin.figure == figure) out.push_back(pin.joint);
  return out;
}

Joint pinnedBy(MovedPart part) {
  switch (part) {
    case MovedPart::LeftHand:
      return Joint::LeftWrist;
    case MovedPart::RightHand:
      return Joint::RightWrist;
    case MovedPart::LeftFoot:
      return Joint::LeftAnkle;
    case MovedPart::RightFoot:
      return Joint::RightAnkle;
    case MovedPart::Pelvis:
      return Joint::Pelvis;
    default:
      return Joint::Head;
  }
}

/// Does the staging's figure haul on its thing?
bool hauls(const StagedPanel& panel, const Staging& staging, std::size_t figure,
           std::size_t thing) {
  const int prop = beatPropOf(*panel.beat, staging, thing);
  const auto who =
      std::ranges::find(panel.beat->figures, staging.figures[figure].who, &BeatFigure::who);
  return prop >= 0 && who != panel.beat->figures.end() &&
         isHauledBy(*who, static_cast<std::size_t>(prop), *panel.beat);
}

bool isHauledLine(const StagedPanel& panel, const Staging& from, const Handle& handle) {
  return handle.grab == Grab::Thing && handle.figure >= 0 &&
         hauls(panel, from, static_cast<std::size_t>(handle.figure),
               static_cast<std::size_t>(handle.thing));
}

/// Hands that hold `thing`; with one thing held, all that are busy.
std::vector<MovedPart> handsOn(const StagedPanel& panel, const Staging& staging, std::size_t figure,
                               const Vec3& middle) {
  const Scene scene = panel.sceneOf(staging);
  const BusyHands busy = busyHands(*panel.beat, scene, figure);
  const Actor& actor = scene.actors[figure];
  int things = 0;
  for (std::size_t i = 0; i < staging.props.size(); ++i)
    things += holderOfThing(*panel.beat, staging, i) == static_cast<int>(figure);
  if (busy.left && busy.right && things > 1) {
    const auto far = [&](MovedPart hand) {
      return (placeOf(hand, *actor.body, actor.skeleton) - middle).norm();
    };
    const bool left = far(MovedPart::LeftHand) < far(MovedPart::RightHand);
    return {left ? MovedPart::LeftHand : MovedPart::RightHand};
  }
  std::vector<MovedPart> out;
  if (busy.left) out.push_back(MovedPart::LeftHand);
  if (busy.right) out.push_back(MovedPart::RightHand);
  return out;
}

/// The parts of the figure that go when that handle goes.
std::vector<MovedPart> partsMoved(const StagedPanel& panel, const Staging& from,
                                  const Handle& handle) {
  const auto figure = static_cast<std::size_t>(handle.figure);
  if (handle.grab == Grab::Thing) return handsOn(panel, from, figure, handle.world);
  const MovedPart part = *partOf(handle.grab);
  const bool hand = part == MovedPart::LeftHand || part == MovedPart::RightHand;
  if (hand && holdsSomething(*panel.beat, from, handle.figure)) {
    const std::vector<MovedPart> hands = handsOn(panel, from, figure, handle.world);
    if (hands.size() == 2) return hands;
  }
  return {part};
}

Dragged reached(const StagedPanel& panel, const Staging& from, const Handle& handle,
                const Vec3& way, const std::vector<Pin>& pins) {
  const auto figure = static_cast<std::size_t>(handle.figure);
  const SetFigure& set = from.figures[figure];
  const Pose& named = panel.stager->poses().orStand(set.pose);
  const Body& body = panel.stager->bodyOf(set.who, panel.beat->id);
  const Skeleton skeleton = posed(body, named, set);
  ReachWish wish;
  wish.pins = pinsOf(pins, handle.figure);
  for (const MovedPart part : partsMoved(panel, from, handle)) {
    wish.targets.push_back({part, placeOf(part, body, skeleton) + way});
    std::erase(wish.pins, pinnedBy(part));
  }
  ReachedPose r = reachPose(body, named, set, wish, panel.stager->limits());
  r.set.turnsDeg = turnsThatDiffer(named, r.pose);
  Dragged out{withFigure(panel, from, figure, r.set), 0, r.shortfall(), r.limits};
  for (const Reached& part : r.reached) out.shortM = std::max(out.shortM, part.shortM);
  return out;
}

/// Where the ray through that page point meets the level plane; the farthest place toward it when
/// it meets none or one beyond.
Vec3 onLevel(const StagedPanel& panel, const Camera& camera, Point page, const Vec3& at) {
  const Vec3 ray = camera.rayThrough(panel.frameUnitsFrom(page));
  const double rise = at.y() - camera.eye().y();
  const double t = std::abs(ray.y()) > 1e-9 ? rise / ray.y() : -1;
  const Vec3 hit = camera.eye() + t * ray;
  const Vec3 way(hit.x() - camera.eye().x(), 0, hit.z() - camera.eye().z());
  if (t > 0 && way.norm() < kFarthestM) return {hit.x(), at.y(), hit.z()};
  if (std::abs(rise) < 0.02) return inFacingPlane(panel, camera, page, at);  // seen edge on
  const Vec3 level = Vec3(ray.x(), 0, ray.z()).normalized() * kFarthestM;
  return {camera.eye().x() + level.x(), at.y(), camera.eye().z() + level.z()};
}

/// Where something that stands at `at` and is seen at `seen` comes to when it is drawn to `to`.
Vec3 stoodAt(const StagedPanel& panel, const Camera& camera, const Vec3& at, Point seen,
             const DragTo& to) {
  const Vec3 toward = -levelForward(camera) * to.nearerM;
  const Point base = panel.pageFrom(camera.projectAlways(at));
  const Point wanted{base.x + to.page.x - seen.x, base.y + to.page.y - seen.y};
  if (!to.upright) {
    Vec3 now = onLevel(panel, camera, wanted, at);
    now.y() = at.y();
    return now + toward;
  }
  const Vec3 normal = levelForward(camera);
  const Vec3 ray = camera.rayThrough(panel.frameUnitsFrom(wanted));
  const double along = ray.dot(normal);
  if (along < 1e-6) return at + toward;
  const Vec3 hit = camera.eye() + ray * ((at - camera.eye()).dot(normal) / along);
  return Vec3(at.x(), std::max(hit.y(), std::min(at.y(), 0.0)), at.z()) + toward;
}

double missOnPage(const StagedPanel& panel, const Camera& camera, const Vec3& at, Point page) {
  const Vec3 wanted = inFacingPlane(panel, camera, page, at);
  return (wanted - at).norm();
}

Dragged standing(const StagedPanel& panel, const Staging& from, const Handle& handle,
                 const DragTo& to) {
  const auto figure = static_cast<std::size_t>(handle.figure);
  const Camera camera = panel.cameraOf(from);
  SetFigure set = from.figures[figure];
  const Vec3 at = stoodAt(panel, camera, vec(set.at), handle.page, to);
  set.at = place(at);
  Dragged out{withFigure(panel, from, figure, set), 0, {}, {}};
  if (to.upright || to.nearerM != 0) return out;
  out.shortM = missOnPage(panel, camera, at, to.page);
  if (out.shortM > 0.05) out.shortfall = "the ground does not go so far";
  return out;
}

Dragged thingStanding(const StagedPanel& panel, const Staging& from, const Handle& handle,
                      const DragTo& to) {
  const auto thing = static_cast<std::size_t>(handle.thing);
  Dragged out{from, 0, {}, {}};
  SetProp& prop = out.staging.props[thing];
  prop.at = place(stoodAt(panel, panel.cameraOf(from), vec(prop.at), handle.page, to));
  return out;
}

Dragged facing(const StagedPanel& panel, const Staging& from, const Handle& handle,
               const DragTo& to) {
  const auto figure = static_cast<std::size_t>(handle.figure);
  const Camera camera = panel.cameraOf(from);
  const Vec3 at = vec(from.figures[figure].at);
  const Vec3 way = onLevel(panel, camera, to.page, at) - levelForward(camera) * to.nearerM - at;
  if (std::hypot(way.x(), way.z()) < 0.02) return {from, 0, {}, {}};
  return {turnedFigure(panel, from, figure, headingOf(way)), 0, {}, {}};
}

/// On the ball around the head: the side of it that the gaze is on, or the side that is asked for.
Vec3 onGazeBall(const StagedPanel& panel, const Camera& camera, const Vec3& middle,
                const Handle& handle, const DragTo& to) {
  const Vec3 ray = camera.rayThrough(panel.frameUnitsFrom(to.page));
  const Vec3 toMiddle = middle - camera.eye();
  const double along = toMiddle.dot(ray);
  const Vec3 off = along * ray - toMiddle;  // from the middle to the ray's nearest point
  const double spare = kGazeBallM * kGazeBallM - off.squaredNorm();
  if (spare <= 0) return middle + off;
  const bool near = to.nearerM != 0 ? to.nearerM > 0 : (handle.world - middle).dot(ray) < 0;
  return middle + off + (near ? -1 : 1) * std::sqrt(spare) * ray;
}

}  // namespace

Vec3 inFacingPlane(const StagedPanel& panel, const Camera& camera, Point page, const Vec3& through,
                   double nearerM) {
  const Vec3 ray = camera.rayThrough(panel.frameUnitsFrom(page));
  const double depth = std::max(camera.depth(through) - nearerM, 0.05);
  return camera.eye() + ray * (depth / ray.dot(forwardOf(camera)));
}

Dragged gazedAt(const StagedPanel& panel, const Staging& from, std::size_t figure,
                const Vec3& place) {
  const SetFigure& set = from.figures[figure];
  const Pose& named = panel.stager->poses().orStand(set.pose);
  const Body& body = panel.stager->bodyOf(set.who, panel.beat->id);
  TurnedHead head = headTurnedTo(body, named, set, place, panel.stager->limits());
  head.set.turnsDeg = turnsThatDiffer(named, head.pose);
  const double off = head.offDeg;
  Dragged out{withFigure(panel, from, figure, head.set), kGazeBallM * off / kDeg, {}, {}};
  if (off > kOffGazeDeg) out.shortfall = fmt::format("gaze {:.0f}° off", off);
  return out;
}

Staging withFigure(const StagedPanel& panel, const Staging& from, std::size_t figure,
                   SetFigure changed) {
  Staging out = from;
  out.figures[figure] = std::move(changed);
  if (!holdsSomething(*panel.beat, from, static_cast<int>(figure))) return out;
  const Scene before = panel.sceneOf(from);
  Scene after = panel.sceneOf(out);
  carryProps(*panel.beat, figure, before, after);
  out.props = after.props;
  return out;
}

Staging flippedFigure(const StagedPanel& panel, const Staging& from, std::size_t figure) {
  SetFigure set = from.figures[figure];
  set.poseMirrored = !set.poseMirrored;
  set.gazeDeg = -set.gazeDeg;
  return withFigure(panel, from, figure, set);
}

Staging turnedFigure(const StagedPanel& panel, const Staging& from, std::size_t figure,
                     double headingDeg) {
  SetFigure set = from.figures[figure];
  set.headingDeg = std::remainder(headingDeg, 360.0);
  return withFigure(panel, from, figure, set);
}

Staging posedAs(const StagedPanel& panel, const Staging& from, std::size_t figure,
                const std::string& pose, bool mirrored) {
  Staging out = from;
  SetFigure& set = out.figures[figure];
  set.pose = pose;
  set.poseMirrored = mirrored;
  set.turnsDeg.clear();
  if (!holdsSomething(*panel.beat, from, static_cast<int>(figure))) return out;
  if (!std::ranges::equal(from.props, panel.beat->props, {}, &SetProp::prop, &Prop::id))
    return withFigure(panel, from, figure, out.figures[figure]);
  Scene scene = panel.sceneOf(out);
  putHeldProps(*panel.beat, scene);
  for (std::size_t i = 0; i < out.props.size(); ++i) {
    if (holderOfThing(*panel.beat, from, i) != static_cast<int>(figure)) continue;
    if (hauls(panel, from, figure, i))
      stringAnew(panel.beat->props[i], haulingHands(scene.actors[figure]), out.props[i]);
    else
      out.props[i] = scene.props[i];
  }
  return out;
}

Dragged dragged(const StagedPanel& panel, const Staging& from, const Handle& handle,
                const DragTo& to, const std::vector<Pin>& pins) {
  const Camera camera = panel.cameraOf(from);
  switch (handle.grab) {
    case Grab::Ground:
      return standing(panel, from, handle, to);
    case Grab::Heading:
      return facing(panel, from, handle, to);
    case Grab::Gaze: {
      const auto figure = static_cast<std::size_t>(handle.figure);
      const SetFigure& set = from.figures[figure];
      const Vec3 middle = headMiddle(posed(panel.stager->bodyOf(set.who, panel.beat->id),
                                           panel.stager->poses().orStand(set.pose), set));
      return gazedAt(panel, from, figure, onGazeBall(panel, camera, middle, handle, to));
    }
    case Grab::Thing:
      if (handle.figure < 0) return thingStanding(panel, from, handle, to);
      break;
    default:
      break;
  }
  const Vec3 wanted = inFacingPlane(panel, camera, to.page, handle.world, to.nearerM);
  const Vec3 way = wanted - handle.world;
  return reached(panel, from, handle, isHauledLine(panel, from, handle) ? Vec3(2 * way) : way,
                 pins);
}

}  // namespace tw
