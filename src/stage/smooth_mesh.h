// Makes a mesh that can be drawn of bare triangles: normals that are shared where the surface is
// round and apart where it has an edge, triangles wound outward as far as that can be told.
#pragma once

#include <array>
#include <cstdint>
#include <vector>

#include "stage/figure.h"

namespace tw {

/// Triangles without area are left out; points that no triangle uses too. Triangles joined by an
/// edge are turned alike, as most of them were; a closed part gets its outside out.
Mesh smoothMesh(const std::vector<Vec3>& points,
                std::vector<std::array<std::uint32_t, 3>> triangles);

}  // namespace tw
