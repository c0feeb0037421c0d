// Meshes made finer for close views, so that outlines are curves where the page shows them large.
#pragma once

#include <vector>

#include "stage/camera.h"
#include "stage/figure.h"

namespace tw {

/// Only the triangles that can touch the frame (and a margin); points are kept as they are.
Mesh withinFrame(const Mesh& mesh, const Camera& camera);

/// The normals of the surface itself, from the triangles' planes weighted by area. Bodies carry
/// normals that are calmed for shading; outlines need the true ones.
std::vector<Vec3> surfaceNormals(const Mesh& mesh);

/// Each triangle cut into four, new points moved onto the curve that the normals suggest. `light`,
/// when given, holds other normals of the same points; it grows by plain middles.
Mesh refinedOnce(const Mesh& mesh, std::vector<Vec3>* light = nullptr);

/// A body made ready to be drawn large.
struct FineBody {
  Mesh surface;             ///< with the surface's own normals
  std::vector<Vec3> light;  ///< the normals to shade it by
};

/// The body cut to the frame and refined until its triangles' sides are a few pixels long on a
/// picture of that width, or there are too many of them.
FineBody fineBody(const Mesh& mesh, const Camera& camera, int width);

}  // namespace tw
