// The volumes of which bodyMesh is made, one function each. All take a Sculpt: the body, its posed
// skeleton, how fine to be, and the mesh they add to.
#pragma once

#include "stage/loft.h"

namespace tw {

struct Sculpt {
  const Body& body;
  const Skeleton& skeleton;
  Fineness fine;
  double unit;  ///< stature of the figure whose neck-down lengths these are, metres
  Mesh mesh;
};

/// Radii of a limb's ring, in shares of Sculpt::unit: away from and toward the body's middle.
struct Girth {
  double out, in, front, back;
};

/// −1 for the left limb, +1 for the right: the sign of "outward" along a frame's right.
inline double sideOf(bool left) {
  return left ? -1.0 : 1.0;
}

/// A ring across the frame's up axis.
Ring ringAt(const Vec3& centre, const Eigen::Matrix3d& frame, const Girth& girth, double side,
            double unit, double square = 0);

/// An egg with its long axis along the frame's up; radii in metres.
void addEgg(Sculpt& sculpt, const Vec3& centre, const Eigen::Matrix3d& frame, const Vec3& radii,
            BodyPart part);

void addTrunk(Sculpt& sculpt);
void addShoulders(Sculpt& sculpt, bool left);
void addNeck(Sculpt& sculpt);
void addHead(Sculpt& sculpt);
void addHair(Sculpt& sculpt);
void addUpperArm(Sculpt& sculpt, bool left);
void addForearm(Sculpt& sculpt, bool left);
void addHand(Sculpt& sculpt, bool left);
void addThigh(Sculpt& sculpt, bool left);
void addShank(Sculpt& sculpt, bool left);
void addFoot(Sculpt& sculpt, bool left);

}  // namespace tw
