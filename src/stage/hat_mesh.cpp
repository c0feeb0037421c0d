// Hats as shells round the head, over whatever hair is there.
#include <algorithm>

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

/// Leaves the face free, with a rim and a ring at the neck.
void addHelmet(Sculpt& s) {
  addShell(s,
           {{-0.06, 1.05, 0.10, 0.56, 0.05},
            {0.16, 1.20, 0.12, 0.64, 0.05},
            {0.42, 1.30, 0.20, 0.70, 0.05},
            {0.66, 1.32, 0.42, 0.71, 0.05},
            {0.78, 1.28, 0.55, 0.68, 0},
            {0.92, 1.08, 0.48, 0.58, 0},
            {1.04, 0.70, 0.30, 0.38, 0}},
           0.06);
  addShell(
      s,
      {{0.74, 1.34, 0.57, 0.72, 0.0}, {0.77, 1.38, 0.60, 0.73, 0.0}, {0.80, 1.32, 0.57, 0.70, 0}},
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
