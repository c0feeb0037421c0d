// Meshes of simple props: box, cylinder, cone, ellipsoid. Each stands on y = 0 with the middle of
// its base at the origin, sizes in metres as width (x), height (y), depth (z). Round sides share
// smooth normals; flat faces keep their own, so that edges are found as creases. All are closed and
// wound outward.
#pragma once

#include <array>
#include <string>
#include <vector>

#include "stage/figure.h"

namespace tw {

Mesh boxMesh(const std::array<double, 3>& sizeM);
Mesh cylinderMesh(const std::array<double, 3>& sizeM, int around = 40);
Mesh coneMesh(const std::array<double, 3>& sizeM, int around = 40);
Mesh ellipsoidMesh(const std::array<double, 3>& sizeM, int around = 40);

/// By the names of Prop::shape, those of building_shapes.h among them; an unknown name gives a box.
Mesh shapeMesh(const std::string& shape, const std::array<double, 3>& sizeM);
std::vector<std::string> shapeNames();

/// The mesh tipped by `pitchDeg` (> 0: the top toward the default camera), turned by `headingDeg`
/// (as figures are: > 0 turns the front from −z toward +x) and set down at `at`.
/// `aboutCentre` turns it about half its height and brings that point to `at`: for held things.
Mesh placed(Mesh mesh, const Place3& at, double headingDeg, double pitchDeg = 0,
            bool aboutCentre = false);

}  // namespace tw
