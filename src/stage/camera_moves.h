// A camera moved by hand: round its pivot, toward it and away, up and down, turned in place,
// rolled, with another lens. Every move says what it keeps. The pivot is what the picture is about,
// usually the focus's head. Limits of lens and roll are the brief's (job/beat.h); the others stand
// here, common practice, no source.
#pragma once

#include "geometry/fit_largest.h"
#include "stage/camera.h"
#include "stage/handles.h"

namespace tw {

inline constexpr double kNearestPivotM = 0.25, kFarthestPivotM = 300;
inline constexpr double kSteepestPitchDeg = 88;
inline constexpr double kLowestEyeM = 0.05;    ///< above the ground, unless it is lower already
inline constexpr double kMostLensShift = 1.5;  ///< frame widths

/// The eye goes round the pivot, to the left of it for aroundDeg > 0 and up for overDeg > 0. Keeps
/// the distance to the pivot and its place in the frame.
CameraPlace orbited(CameraPlace camera, const Vec3& pivot, double aroundDeg, double overDeg);
/// The distance to the pivot times `times`. Keeps the pivot's place in the frame.
CameraPlace dollied(CameraPlace camera, const Vec3& pivot, double times);
/// Turned in place: to the right, up.
CameraPlace turned(CameraPlace camera, double panDeg, double tiltDeg);
CameraPlace rolled(CameraPlace camera, double byDeg);
/// The picture slides under the frame by that share of its width; nothing in it changes shape.
CameraPlace shifted(CameraPlace camera, Vector frameWidths);
/// The eye moves across its line of sight until the pivot has gone that way in the frame.
CameraPlace trucked(CameraPlace camera, const Vec3& pivot, Vector frameWidths, double aspect);

/// How the pivot keeps its place when the eye rises.
enum class RiseBy : std::uint8_t {
  Tilt,  ///< the camera looks down on it
  Shift  ///< the lens is shifted, so that uprights stay as they are
};
CameraPlace raised(CameraPlace camera, const Vec3& pivot, double metres, RiseBy by, double aspect);
/// Turned so that the place is seen at that point, in frame units.
CameraPlace aimed(CameraPlace camera, const Vec3& place, Point frameUnits, double aspect);

/// Another lens from the same place.
CameraPlace withLens(CameraPlace camera, double focalMm);
/// Another lens, with the eye moved along its line of sight so that chin and crown keep their
/// distance in the frame and their middle its place.
CameraPlace withLensKeeping(CameraPlace camera, double focalMm, const Vec3& chin, const Vec3& crown,
                            double aspect);

/// The picture enlarged and moved as the fit says, by lens and lens shift alone: every outline
/// keeps its shape. Nothing when the fit turns the figure about or asks for a lens that there is
/// not.
std::optional<CameraPlace> fitted(CameraPlace camera, const Rect& frame, const Fit& fit);

/// What moves of the camera turn about: the focus's head, or a hand or thing that is the subject.
Vec3 pivotOf(const Scene& scene);
/// The staging seen by that camera. Its choice follows (shot, eye height, side, tilt, and the lens
/// when it changed), so that cards name what is seen and a panel of another shape is solved alike.
Staging seenBy(const StagedPanel& panel, const Staging& staging, const CameraPlace& camera);

}  // namespace tw
