// Bodies and things in each other's way: which hands and feet of a figure touch something that
// does not go along with them, and how much of its limbs lies inside another body or thing.
#pragma once

#include "stage/blocking.h"

namespace tw {

/// From the place to the nearest point of the mesh's triangles, metres.
double distanceToSurface(const Mesh& mesh, const Vec3& place);

/// The place lies inside the closed mesh; parts that run into each other count once.
bool isInside(const Mesh& mesh, const Vec3& place);

/// Wrists and ankles whose palm or raised sole touches another figure, a thing that nobody holds,
/// or the set. A hand counts from farther away on what its figure is said to push, climb or lean
/// on. `solids` are the whole scene's.
std::vector<Joint> touchingLimbs(const Beat& beat, const Scene& scene, std::size_t figure,
                                 const std::vector<Solid>& solids);

/// Share of the bones of head, arms and legs that lies inside other figures and things, 0 … 1.
double limbsInside(const Beat& beat, const Scene& scene, std::size_t figure,
                   const std::vector<Solid>& solids);

}  // namespace tw
