// Meshes made finer for close views, so that outlines are curves where the page shows them large.
#pragma once

#include "stage/camera.h"
#include "stage/figure.h"

namespace tw {

/// Only the triangles that can touch the frame (and a margin); points are kept as they are.
Mesh withinFrame(const Mesh& mesh, const Camera& camera);

/// Each triangle cut into four, new points moved onto the curve that the normals suggest.
Mesh refinedOnce(const Mesh& mesh);

/// The mesh cut to the frame and refined until its triangles' sides are a few pixels long on a
/// picture of that width, or there are too many of them.
Mesh refinedFor(const Mesh& mesh, const Camera& camera, int width);

}  // namespace tw
