// The lines that an artist would find on a surface: smooth contours (where it turns away from the
// eye) and creases (edges of boxes, rims, open borders), as chains of points in the world. Whether
// they are hidden is not asked here.
#pragma once

#include <cstdint>
#include <vector>

#include "stage/figure.h"

namespace tw {

struct ContourPoint {
  Vec3 at;
  Vec3 normal;  ///< of the surface, unit length
};

enum class LineKind : std::uint8_t {
  Contour,  ///< the surface turns away, or a crease with only one side seen
  Crease,   ///< an edge with both sides seen
};

struct ContourChain {
  std::vector<ContourPoint> points;
  bool closed = false;
  LineKind kind = LineKind::Contour;
};

/// Smooth contours that an opaque surface can show: where n·v = 0 and the surface bulges toward
/// the eye. Points shared by triangles must share an index.
std::vector<ContourChain> smoothContours(const Mesh& mesh, const Vec3& eye);

/// Edges sharper than `leastAngleDeg` with at least one side turned to the eye, and open borders.
/// Points at the same place count as one. Chains end at corners, so that these stay sharp.
std::vector<ContourChain> creases(const Mesh& mesh, const Vec3& eye, double leastAngleDeg = 35);

}  // namespace tw
