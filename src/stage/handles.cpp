#include "stage/handles.h"

#include <algorithm>

#include "stage/held_props.h"

namespace tw {
namespace {

constexpr std::array<std::string_view, 10> kNames{
    "left hand", "right hand", "left foot", "right foot", "head",
    "hips",      "gaze",       "ground",    "heading",    "thing"};

constexpr std::array<Grab, 9> kOfFigure{Grab::Head,      Grab::Gaze,   Grab::LeftHand,
                                        Grab::RightHand, Grab::Pelvis, Grab::LeftFoot,
                                        Grab::RightFoot, Grab::Ground, Grab::Heading};
constexpr double kNearM = 0.05;  // nearer than this to the eye nothing has a place on the page

// A picture this small tells bodies apart and is rendered in a few milliseconds.
constexpr int kPictureWidth = 200;
constexpr double kPictureDetail = 0.3;
// A handle lies inside its own body: so much of it may be before it.
constexpr double kOwnDepthM = 0.22, kOtherDepthM = 0.04;

Vec3 placeOf(Grab grab, const Actor& actor) {
  const Vec3 feet(actor.set.at.x, actor.set.at.y, actor.set.at.z);
  if (grab == Grab::Ground) return feet;
  if (grab == Grab::Heading) return feet + kHeadingM * directionOf(actor.set.headingDeg);
  if (grab == Grab::Gaze)
    return headMiddle(actor.skeleton) + kGazeBallM * headFront(actor.skeleton);
  return placeOf(*partOf(grab), *actor.body, actor.skeleton);
}

void setOnPage(const StagedPanel& panel, const Camera& camera, Handle& handle) {
  handle.behindEye = camera.depth(handle.world) < kNearM;
  const Point at = camera.projectAlways(handle.world);
  handle.page = handle.behindEye ? Point{} : panel.pageFrom(at);
  handle.outside =
      handle.behindEye || at.x < 0 || at.x > 1 || at.y < 0 || at.y > 1 / camera.aspect();
}

bool isCovered(const Handle& handle, const Picture& picture, const Camera& camera,
               const std::vector<Solid>& solids) {
  const Point at = camera.projectAlways(handle.world);
  const auto x = static_cast<int>(at.x * picture.width);
  const auto y = static_cast<int>(at.y * picture.width);
  if (x < 0 || y < 0 || x >= picture.width || y >= picture.height) return false;
  const auto k = static_cast<std::size_t>(y) * static_cast<std::size_t>(picture.width) +
                 static_cast<std::size_t>(x);
  if (picture.solid[k] < 0) return false;
  const Solid& seen = solids[static_cast<std::size_t>(picture.solid[k])];
  const bool own =
      handle.grab == Grab::Thing ? seen.prop == handle.thing : seen.figure == handle.figure;
  if (own && handle.grab == Grab::Thing) return false;
  return picture.depth[k] < camera.depth(handle.world) - (own ? kOwnDepthM : kOtherDepthM);
}

}  // namespace

std::string_view nameOf(Grab grab) {
  return kNames[static_cast<std::size_t>(grab)];
}

std::optional<MovedPart> partOf(Grab grab) {
  switch (grab) {
    case Grab::LeftHand:
      return MovedPart::LeftHand;
    case Grab::RightHand:
      return MovedPart::RightHand;
    case Grab::LeftFoot:
      return MovedPart::LeftFoot;
    case Grab::RightFoot:
      return MovedPart::RightFoot;
    case Grab::Head:
      return MovedPart::Head;
    case Grab::Pelvis:
      return MovedPart::Pelvis;
    case Grab::Gaze:
      return MovedPart::Gaze;
    default:
      return std::nullopt;
  }
}

Point StagedPanel::pageFrom(Point p) const {
  return {frame.min.x + p.x * frame.width(), frame.min.y + p.y * frame.width()};
}

Point StagedPanel::frameUnitsFrom(Point page) const {
  return {(page.x - frame.min.x) / frame.width(), (page.y - frame.min.y) / frame.width()};
}

int beatPropOf(const Beat& beat, const Staging& staging, std::size_t thing) {
  for (std::size_t i = 0; i < beat.props.size(); ++i)
    if (beat.props[i].id == staging.props[thing].prop) return static_cast<int>(i);
  return -1;
}

int holderOfThing(const Beat& beat, const Staging& staging, std::size_t thing) {
  const int prop = beatPropOf(beat, staging, thing);
  if (prop < 0 || !isInHand(beat, static_cast<std::size_t>(prop))) return -1;
  const Prop& held = beat.props[static_cast<std::size_t>(prop)];
  for (std::size_t i = 0; i < staging.figures.size(); ++i) {
    if (held.heldBy == staging.figures[i].who) return static_cast<int>(i);
    for (const BeatFigure& f : beat.figures)
      if (f.who == staging.figures[i].who && f.target == held.id && hauls(beat, f))
        return static_cast<int>(i);
  }
  return showsHandOnThing(beat) && !staging.figures.empty() ? 0 : -1;
}

std::vector<Handle> handlesOf(const StagedPanel& panel, const Staging& staging) {
  const Scene scene = panel.sceneOf(staging);
  const Camera camera = panel.cameraOf(staging);
  std::vector<Handle> out;
  for (std::size_t i = 0; i < scene.actors.size(); ++i)
    for (const Grab grab : kOfFigure) {
      Handle handle{grab, static_cast<int>(i), -1, placeOf(grab, scene.actors[i]), {}};
      setOnPage(panel, camera, handle);
      out.push_back(handle);
    }
  for (std::size_t i = 0; i < staging.props.size(); ++i) {
    if (beatPropOf(*panel.beat, staging, i) < 0) continue;
    Handle handle{Grab::Thing,
                  holderOfThing(*panel.beat, staging, i),
                  static_cast<int>(i),
                  scene.propBoxes[i].middle(),
                  {}};
    setOnPage(panel, camera, handle);
    out.push_back(handle);
  }
  return out;
}

void markHidden(const StagedPanel& panel, const Staging& staging, std::vector<Handle>& handles) {
  const Camera camera = panel.cameraOf(staging);
  const std::vector<Solid> solids = panel.stager->solidsOf(staging, *panel.beat, kPictureDetail);
  const Picture picture = render(solids, camera, kPictureWidth);
  for (Handle& handle : handles) {
    const bool inTheAir = handle.grab == Grab::Gaze || handle.grab == Grab::Heading;
    handle.hidden = !inTheAir && !handle.outside && isCovered(handle, picture, camera, solids);
  }
}

}  // namespace tw
