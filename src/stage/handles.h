// The grab points of a staged panel: what an artist takes hold of to pose, turn and move figures
// and things. Each says where it is in the space and on the page, and whether it can be seen.
// Left and right are the figure's own, as they are seen, also when its pose is mirrored.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "stage/blocking.h"
#include "stage/reach_pose.h"

namespace tw {

enum class Grab : std::uint8_t {
  LeftHand,
  RightHand,
  LeftFoot,
  RightFoot,
  Head,
  Pelvis,
  Gaze,     ///< what the head turns to, before the face
  Ground,   ///< where the figure stands
  Heading,  ///< on the ground before the figure: which way it faces
  Thing     ///< the middle of a prop
};
std::string_view nameOf(Grab grab);
/// The part that reachPose moves, or nothing for ground, heading and things.
std::optional<MovedPart> partOf(Grab grab);

/// One panel and what is needed to stage it; all outlive this.
struct StagedPanel {
  const Stager* stager = nullptr;
  const Beat* beat = nullptr;
  Rect frame;         ///< of the camera, mm on the page: frameOf(panel.outline)
  std::string focus;  ///< character id, or empty

  double aspect() const { return frame.width() / frame.height(); }
  Camera cameraOf(const Staging& staging) const { return Camera(staging.camera, aspect()); }
  Scene sceneOf(const Staging& staging) const { return stager->sceneOf(staging, *beat, focus); }
  Point pageFrom(Point frameUnits) const;
  Point frameUnitsFrom(Point page) const;
};

struct Handle {
  Grab grab = Grab::Head;
  int figure = -1;  ///< into the staging's figures; of a thing: who holds it, or −1
  int thing = -1;   ///< into the staging's props, or −1
  Vec3 world = Vec3::Zero();
  Point page;              ///< mm; means nothing when it is behind the eye
  bool behindEye = false;  ///< the camera looks away from it
  bool outside = false;    ///< not within the camera's frame
  bool hidden = false;     ///< something stands before it; see markHidden
  bool operator==(const Handle&) const = default;
};

/// How far before the head's middle the gaze is taken hold of, and the heading before the feet.
inline constexpr double kGazeBallM = 0.42, kHeadingM = 0.55;

/// Figures in the staging's order, each from the head down; then the things.
std::vector<Handle> handlesOf(const StagedPanel& panel, const Staging& staging);
/// Marks what is covered by bodies, things or the set, from a small rendered picture (some ms).
void markHidden(const StagedPanel& panel, const Staging& staging, std::vector<Handle>& handles);

/// Figure that holds, hauls or has its hand on that prop of the staging, or −1.
int holderOfThing(const Beat& beat, const Staging& staging, std::size_t thing);
/// Index into the beat's props, or −1.
int beatPropOf(const Beat& beat, const Staging& staging, std::size_t thing);

}  // namespace tw
