// What every shape is put together from: meshes joined, turned to agree with their normals, flat
// outlines given thickness. As in solid_shapes.h, y is up and a shape stands on y = 0.
#pragma once

#include <vector>

#include "geometry/shapes.h"
#include "stage/figure.h"

namespace tw {

/// Adds a copy of `from`, moved.
void append(Mesh& to, const Mesh& from, const Vec3& by = Vec3::Zero());

/// Turns each triangle so that (b − a) × (c − a) looks to the side that its normals do.
void windOutward(Mesh& mesh);

/// A flat polygon of its own points; `normal` says which side it shows.
void addFace(Mesh& mesh, const std::vector<Vec3>& corners, const Vec3& normal);

/// An outline of a flat form, x to the right and y up. Turns counter-clockwise around what is
/// solid; a hole turns the other way.
using Outline = std::vector<Point>;

/// A flat form with thickness: `faces` are simple polygons that together cover it, edge to edge;
/// `rims` are its outlines. Lies from z = −depth/2 to depth/2. Closed when the rims are all of the
/// faces' free edges.
Mesh slabMesh(const std::vector<Outline>& faces, const std::vector<Outline>& rims, double depth);
/// The same of one polygon without holes.
Mesh slabMesh(const Outline& outline, double depth);

/// By the divergence theorem with the triangles' winding, m³; of a closed mesh > 0 when they look
/// outward.
double signedVolume(const Mesh& mesh);

}  // namespace tw
