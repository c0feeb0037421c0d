// The camera solved, not guessed: from shot size, side, eye height, tilt and the panel's shape to
// a place, a lens and a lens shift that put the cut line where it belongs and keep in the frame
// what the shot has to hold.
#pragma once

#include <optional>

#include "stage/blocking.h"

namespace tw {

struct FrameWish {
  StagingChoice choice;
  double aspect = 1.5;
  double airShare = 0;
  bool wholeFigure = false;
  bool leftward = false;           ///< side and tilt are mirrored
  std::optional<Rect> keepInside;  ///< panel units
};

CameraPlace framedCamera(const Scene& scene, const FrameWish& wish);

/// Stature (or the subject's height) over the frame's height, at the depth of the head in close
/// shots and of the body's upper half in others: what shot_size.h names.
double statureOverFrame(const Scene& scene, const Camera& camera);

}  // namespace tw
