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

/// Rings as they are drawn, clothes included: of the trunk from the seat up, of limbs from the near
/// joint down, of a skirt or coat from the waist down (empty without one).
std::vector<Ring> trunkRings(const Sculpt& sculpt);
std::vector<Ring> upperArmRings(const Sculpt& sculpt, bool left);
std::vector<Ring> forearmRings(const Sculpt& sculpt, bool left);
std::vector<Ring> thighRings(const Sculpt& sculpt, bool left);
std::vector<Ring> shankRings(const Sculpt& sculpt, bool left);
std::vector<Ring> skirtRings(const Sculpt& sculpt);
std::vector<Ring> collarRings(const Sculpt& sculpt);

/// A slice of the head: height above the chin (head heights), half breadth (half head breadths),
/// front and back of the ear's axis (head depths), squareness.
struct HeadSlice {
  double up, half, front, back, square;
};
Ring headRing(const Sculpt& sculpt, const HeadSlice& slice);
/// Heads are looked at closest.
Fineness headFineness(Fineness fine);

/// A point in head units: x half breadths, y head heights above the chin, z head depths.
Vec3 onHead(const Sculpt& sculpt, const Vec3& p);

/// The hair on the skull, from the lowest slice up; empty on a bald head.
std::vector<HeadSlice> hairShell(Hair cut);

void addTrunk(Sculpt& sculpt);
void addShoulders(Sculpt& sculpt, bool left);
void addNeck(Sculpt& sculpt);
void addHead(Sculpt& sculpt);
void addHair(Sculpt& sculpt);
void addBeard(Sculpt& sculpt);
void addHat(Sculpt& sculpt);
/// Coat or skirt, collar, scarf, gauntlets, boots: what stands off the body.
void addGarments(Sculpt& sculpt);
void addUpperArm(Sculpt& sculpt, bool left);
void addForearm(Sculpt& sculpt, bool left);
void addHand(Sculpt& sculpt, bool left);
void addThigh(Sculpt& sculpt, bool left);
void addShank(Sculpt& sculpt, bool left);
void addFoot(Sculpt& sculpt, bool left);

}  // namespace tw
