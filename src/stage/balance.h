// Does a pose stand? The mass centre, dropped to the floor, against the hull of what touches it.
// Static balance alone: a run, a leap or a fall is meant to be out of balance and is only labelled.
#pragma once

#include <array>
#include <string>
#include <vector>

#include "geometry/shapes.h"
#include "stage/figure.h"

namespace tw {

/// A place of the body's surface that can touch the floor, moving with a joint's frame.
struct Contact {
  Joint joint = Joint::Pelvis;  ///< it moves with this joint's frame
  Vec3 at;                      ///< world
};
/// Heel, ball and toe tip of both feet, knees, palms, elbows, seat, back of the chest, in that
/// order; always the same number.
std::vector<Contact> contactsOf(const Body& body, const Skeleton& skeleton);
/// Is that near enough to the floor to carry weight?
bool touches(const Contact& contact, double floor);

/// A share of the body's mass at a place that moves with a joint's frame. The shares sum to 1.
struct MassPart {
  Joint joint = Joint::Pelvis;
  Vec3 at;
  double mass = 0;
};
std::array<MassPart, 16> massParts(const Body& body, const Skeleton& skeleton);

struct Balance {
  Vec3 massCentre;
  Polygon support;     ///< on the floor, metres: x, z
  double marginM = 0;  ///< from the mass centre to the support's edge, > 0 inside
  bool judged = true;  ///< false: the pose moves, floats or lies on what is not the floor
  std::string label;   ///< "stands, 6 cm inside its support", "runs: not judged"
};
/// `floor` = height of what the figure stands on. The skeleton is of that pose.
Balance balanceOf(const Body& body, const Pose& pose, const Skeleton& skeleton, double floor);

}  // namespace tw
