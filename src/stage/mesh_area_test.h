// Sums over a mesh, for tests only.
#pragma once

#include <Eigen/Geometry>

#include "stage/figure.h"

namespace tw {

/// Area of all triangles, m².
inline double surface(const Mesh& mesh) {
  double sum = 0;
  for (const auto& t : mesh.triangles)
    sum += (mesh.points[t[1]] - mesh.points[t[0]])
               .cross(mesh.points[t[2]] - mesh.points[t[0]])
               .norm() /
           2;
  return sum;
}

}  // namespace tw
