// A loft: a closed surface drawn over rings. A ring is an ellipse with a radius of its own to each
// of four sides, squared off at will, so that muscle may swell on one side only. All bodies are
// made of lofts that run into each other.
#pragma once

#include <Eigen/Geometry>
#include <vector>

#include "stage/figure.h"

namespace tw {

/// A ring in a frame: it spans `right` and `front`. Radii in metres.
struct Ring {
  Vec3 centre = Vec3::Zero();
  Vec3 right = Vec3::UnitX(), front = Vec3::UnitZ();
  double toRight = 0, toLeft = 0, toFront = 0, toBack = 0;
  double square = 0;  ///< 0 ellipse … 1 nearly a box with round corners
};

/// Rounded ends: how far they stand out beyond the first and last ring, metres; 0 = flat.
struct Ends {
  double first = 0, last = 0;
};

/// How finely lofts are built: segments around a body-sized ring and rings along per station.
struct Fineness {
  int around = 16;
  int along = 3;
  int caps = 3;
};
Fineness finenessOf(double detail);

/// `stations` made smooth: a curve through all of them (Catmull–Rom), `along` rings a stretch.
std::vector<Ring> smoothed(const std::vector<Ring>& stations, int along);

/// Adds the closed surface over the rings to the mesh, outward whatever the rings' direction.
/// Normals are left to shadeSmoothly.
void addLoft(Mesh& mesh, const std::vector<Ring>& rings, Ends ends, const Fineness& fine,
             BodyPart part);

/// Fills normals of all points from `firstPoint` on, weighted by area.
void shadeSmoothly(Mesh& mesh, std::size_t firstPoint, std::size_t firstTriangle);

/// Lets the normals of the first `count` points agree with those of their surroundings, about two
/// cells of `cell` metres wide.
void blendNormals(Mesh& mesh, std::size_t count, double cell);

}  // namespace tw
