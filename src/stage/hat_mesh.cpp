// Hats as shells round the head, over whatever hair is there.
#include <algorithm>
#include <cmath>

#include "stage/body_parts.h"

namespace tw {
namespace {

using Slices = std::vector<HeadSlice>;

void addShell(Sculpt& s, const Slices& slices, double cap) {
  std::vector<Ring> rings;
  rings.reserve(slices.size());
  for (const HeadSlice& slice : slices) rings.push_back(headRing(s, slice));
  addLoft(s.mesh, smoothed(rings, std::min(2, s.fine.along)), {0.0, cap * s.body.headHeight},
          headFineness(s.fine), BodyPart::Hat);
}

/// A knitted cap with its rim turned up.
void addKnittedCap(Sculpt& s) {
  addShell(s,
           {{0.66, 1.14, 0.52, 0.60, 0.05},
            {0.70, 1.20, 0.55, 0.63, 0.05},
            {0.76, 1.20, 0.545, 0.63, 0.05}},
           0.02);
  addShell(s,
           {{0.74, 1.12, 0.50, 0.585, 0.05},
            {0.84, 1.10, 0.48, 0.56, 0.0},
            {0.96, 0.92, 0.38, 0.46, 0},
            {1.05, 0.58, 0.22, 0.28, 0}},
           0.05);
}

void addBrimmedHat(Sculpt& s) {
  addShell(s,
           {{0.735, 1.20, 0.56, 0.64, 0},
            {0.745, 1.95, 0.90, 0.95, 0},
            {0.765, 1.98, 0.92, 0.97, 0},
            {0.785, 1.20, 0.56, 0.64, 0}},
           0);
  addShell(s,
           {{0.76, 1.14, 0.52, 0.60, 0.05},
            {0.90, 1.10, 0.50, 0.57, 0.05},
            {1.06, 1.00, 0.45, 0.50, 0.05},
            {1.12, 0.82, 0.36, 0.40, 0.05}},
           0.03);
}

/// A dome round the back of the head, open before the face so far that a profile shows, with a rim
/// and a ring at the neck. Its rings stand across the way the head looks; the shell is followed
/// forward outside and back again inside.
void addHelmet(Sculpt& s) {
  const Eigen::Matrix3d& head = s.skeleton.frameOf(Joint::Head);
  const Vec3 centre = onHead(s, {0, 0.53, 0.0});
  const double r = 0.70 * s.body.headHeight, wall = 0.035 * s.body.headHeight;
  std::vector<Ring> rings;
  const auto ring = [&](double forward, double radius) {
    Ring at;
    at.centre = centre + forward * r * head.col(2);
    at.right = head.col(0);
    at.front = head.col(1);
    at.toRight = at.toLeft = at.toFront = at.toBack = radius;
    rings.push_back(at);
  };
  const auto dome = [&](double forward, double radius) {
    ring(forward, radius * std::sqrt(1 - forward * forward));
  };
  for (const double forward : {-0.99, -0.93, -0.75, -0.45, -0.15, 0.1, 0.26}) dome(forward, r);
  const double window = r * std::sqrt(1 - 0.26 * 0.26);
  ring(0.28, window + wall), ring(0.40, window + wall), ring(0.41, window - wall);
  for (const double forward : {0.24, 0.0, -0.4}) dome(forward, r - wall);
  addLoft(s.mesh, smoothed(rings, std::min(2, s.fine.along)), {0, 0}, headFineness(s.fine),
          BodyPart::Hat);
  addShell(s,
           {{-0.30, 1.50, 0.50, 0.60, 0.0},
            {-0.27, 1.62, 0.55, 0.65, 0.0},
            {-0.14, 1.62, 0.55, 0.65, 0.0},
            {-0.10, 1.40, 0.46, 0.56, 0.0}},
           0);
}

void addHood(Sculpt& s) {
  addShell(s,
           {{-0.22, 1.35, 0.30, 0.66, 0.1},
            {0.05, 1.22, 0.16, 0.66, 0.1},
            {0.35, 1.22, 0.22, 0.68, 0.05},
            {0.62, 1.24, 0.36, 0.68, 0.05},
            {0.82, 1.16, 0.50, 0.64, 0},
            {0.95, 0.92, 0.46, 0.54, 0},
            {1.06, 0.52, 0.28, 0.36, 0}},
           0.06);
}

}  // namespace

void addHat(Sculpt& s) {
  switch (s.body.look.hatKind) {
    case Hat::None:
      return;
    case Hat::Cap:
      return addKnittedCap(s);
    case Hat::Brim:
      return addBrimmedHat(s);
    case Hat::Helmet:
      return addHelmet(s);
    case Hat::Hood:
      return addHood(s);
  }
}

}  // namespace tw
