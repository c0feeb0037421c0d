// Walls with openings, arches, doors, windows, stairs, ladders, roofs and towers as meshes. As in
// solid_shapes.h they stand on y = 0 with the middle of the base at the origin, their front to −z.
// Drawn by eye where no source is named.
#pragma once

#include <array>

#include "stage/mesh_parts.h"

namespace tw {

/// A hole through a wall. An arched one ends in a half circle (or as much of it as its height
/// allows); its height counts to the crown.
struct Opening {
  double width = 1, sill = 0, height = 2;  ///< sill 0: a doorway
  bool arched = false;
  double across = 0;  ///< of its middle from the wall's
};

/// A wall of that width, height and thickness with one opening; the opening is made smaller when
/// the wall has no room for it. Closed.
Mesh wallMesh(const std::array<double, 3>& sizeM, const Opening& opening);
/// Area of an opening's hole, m²: what a wall lacks. Facets of the arch counted as they are.
double areaOf(const Opening& opening);

Mesh archMesh(const std::array<double, 3>& sizeM);     ///< a doorway with a round head, in its wall
Mesh doorwayMesh(const std::array<double, 3>& sizeM);  ///< the same with a straight head
Mesh doorMesh(const std::array<double, 3>& sizeM);     ///< frame, leaf with panels, knob
Mesh windowMesh(const std::array<double, 3>& sizeM);   ///< frame and bars, open between them
/// Solid steps that rise away from the camera. `steps` 0: as many as risers of some 18 cm make.
Mesh stairsMesh(const std::array<double, 3>& sizeM, int steps = 0);
Mesh ladderMesh(const std::array<double, 3>& sizeM);
/// The ground: a level rectangle at y = 0 that shows its upper side; it has no thickness.
Mesh groundMesh(const std::array<double, 3>& sizeM);
Mesh pyramidMesh(const std::array<double, 3>& sizeM);
/// Four walls under a saddle roof whose ridge runs across.
Mesh houseMesh(const std::array<double, 3>& sizeM);

/// A square bell tower: plinth, shaft with string courses and slits, a belfry with an arch in each
/// side, a cornice, and a pointed roof. Broken: the top is torn off, a ragged edge left standing.
Mesh towerMesh(const std::array<double, 3>& sizeM, bool broken);

}  // namespace tw
