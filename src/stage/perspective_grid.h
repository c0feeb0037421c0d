// The grid that a panel's camera draws on the ground, for pencilling set and props into the rough.
// It agrees with the figures, because it is made with their camera.
#pragma once

#include "geometry/perspective.h"
#include "stage/camera.h"

namespace tw {

/// `through` is where the measuring wall stands (m): the focus figure's feet. `frame` is the
/// camera's frame on the page, `panel` the outline, both mm.
PerspectiveGrid perspectiveGrid(const Camera& camera, const CameraPlace& place, const Vec3& through,
                                const Rect& frame, const Polygon& panel);

}  // namespace tw
