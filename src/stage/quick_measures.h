// What a staging gives its panel, from joints and capsules alone: no picture is rendered. One
// panel costs a few microseconds, so a search can ask for hundreds of thousands.
#pragma once

#include "stage/blocking.h"
#include "stage/leads.h"

namespace tw {

/// Fills every field of a Variant but `choice`.
Variant quicklyMeasured(const StageRequest& request, const StagingChoice& choice,
                        const Scene& scene, const CameraPlace& place);

/// Where the frame cuts the figure.
struct FrameCut {
  std::string word = "whole";  ///< "whole", or a landmark of shot_size.h, or "out of frame"
  bool atJoint = false;
  double cost = 0;         ///< 0 … 1
  bool whole = true;       ///< nothing of it lies outside the frame
  double heightShare = 0;  ///< of the lowest edge on the body, when cut
};
/// `frame` in panel units; usually 0…1 both ways.
FrameCut frameCut(const Actor& actor, const Camera& camera, ShotSize shot, const Rect& frame);

/// A lead as it falls on the picture.
struct PictureLead {
  Vector direction;  ///< unit, square picture units, y down; zero when there is none
  double strength = 0;
  WorldLead::By by = WorldLead::By::Nothing;
  Point from;  ///< panel units
};
PictureLead leadOnPicture(const Beat& beat, const Scene& scene, const Camera& camera);
/// "Mara points", "Tobi runs", "Mara looks", or empty.
std::string leadSentence(const PictureLead& lead, const std::string& who);

/// Limbs' length on the picture over their true length, mean of arms and legs, 0…1.
double meanReach(const Skeleton& skeleton, const Camera& camera);

/// sign(((B−A)×(C−A))·up) for the first two figures by id and the camera C; 0 without an axis.
double axisSideOf(const Scene& scene, const Vec3& eye);

/// Where the eye lands: the focus's head, its hand in a hand's close-up, or the thing; panel units.
Point focusPoint(const Scene& scene, const Camera& camera, ShotSize shot);
bool showsHandOnly(const Scene& scene, ShotSize shot);

/// Head's box in panel units: chin to crown high.
Rect headBox(const Actor& actor, const Camera& camera);
Point panelPoint(const Camera& camera, const Vec3& at);

}  // namespace tw
