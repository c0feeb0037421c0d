// Meshes of things whose plain shape would not be known again: bell, boat hull, chain.
// As in solid_shapes.h they stand on y = 0 with the middle of the base at the origin.
#pragma once

#include "stage/solid_shapes.h"

namespace tw {

/// A hanging bell, mouth down, with a crown and a clapper.
Mesh bellMesh(const std::array<double, 3>& sizeM);
/// An open boat afloat: sides that flare and rise to both ends, a floor inside. The part below
/// the waterline is left away.
Mesh boatMesh(const std::array<double, 3>& sizeM);
/// Links along y, every second one turned.
Mesh chainMesh(double length, double thick);

/// Three strands laid round each other; slack ropes sway.
Mesh ropeMesh(double length, double thick, bool slack);
Mesh lanternMesh(const std::array<double, 3>& sizeM);
/// Handle below, point up.
Mesh knifeMesh(const std::array<double, 3>& sizeM);
/// A diver's: a ball on a collar, with windows; the front looks to −z.
Mesh helmetMesh(const std::array<double, 3>& sizeM);
Mesh oarMesh(double length, double thick);
Mesh keyMesh(const std::array<double, 3>& sizeM);

}  // namespace tw
