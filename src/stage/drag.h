// A handle of a staged panel is dragged over the page: hands, feet, head and hips by inverse
// kinematics, the gaze by turning the head, figures and things over the ground. What a hand holds
// goes with it; nothing else moves. Every answer is made from the staging at which the drag began,
// so the way of the pen there does not matter, and the same place always gives the same pose.
#pragma once

#include <string>
#include <vector>

#include "stage/handles.h"

namespace tw {

struct Pin {
  int figure = 0;
  Joint joint = Joint::LeftWrist;  ///< a wrist holds its palm, an ankle its sole
  bool operator==(const Pin&) const = default;
};

struct DragTo {
  Point page;  ///< where the handle is to be, mm
  /// Out of the plane through the handle that faces the camera, toward the eye. Of the gaze only
  /// the sign counts: toward the eye or away from it.
  double nearerM = 0;
  bool upright = false;  ///< figures and things go up and down instead of over the ground
};

struct Dragged {
  Staging staging;
  double shortM = 0;                ///< the worst of what was wanted
  std::string shortfall;            ///< "left hand 12 cm short", or empty
  std::vector<std::string> limits;  ///< joints beyond their published limit, within the grace
};

Dragged dragged(const StagedPanel& panel, const Staging& from, const Handle& handle,
                const DragTo& to, const std::vector<Pin>& pins = {});

/// Where a page point is in the space: in the plane through `through` that faces the camera.
Vec3 inFacingPlane(const StagedPanel& panel, const Camera& camera, Point page, const Vec3& through,
                   double nearerM = 0);

/// The head turned to that place, by gaze and a nod, within the neck's limits.
Dragged gazedAt(const StagedPanel& panel, const Staging& from, std::size_t figure,
                const Vec3& place);
/// That figure set otherwise; what it holds goes along.
Staging withFigure(const StagedPanel& panel, const Staging& from, std::size_t figure,
                   SetFigure changed);
/// Its pose, turns and gaze seen in a looking-glass.
Staging flippedFigure(const StagedPanel& panel, const Staging& from, std::size_t figure);
Staging turnedFigure(const StagedPanel& panel, const Staging& from, std::size_t figure,
                     double headingDeg);
/// The figure in another pose of the library; turns made by hand are dropped, and what it holds
/// goes into the hands of the new pose.
Staging posedAs(const StagedPanel& panel, const Staging& from, std::size_t figure,
                const std::string& pose, bool mirrored);

}  // namespace tw
