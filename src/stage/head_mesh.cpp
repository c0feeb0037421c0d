// A head: one egg-shaped loft from the chin's underside to the crown, with planes for jaw, mouth,
// eyes, brow and forehead; a wedge of a nose, ears, and hair as one mass.
#include <cmath>
#include <numbers>

#include "stage/body_parts.h"
#include "stage/figure_proportions.h"

namespace tw {
namespace {

using Mat3 = Eigen::Matrix3d;

/// A slice of the head: height above the chin (head heights), half breadth (half head breadths),
/// front and back of the ear's axis (head depths), squareness.
struct Slice {
  double up, half, front, back, square;
};

constexpr Slice kHisHead[] = {{0.00, 0.30, 0.385, -0.20, 0.2}, {0.05, 0.44, 0.425, -0.14, 0.25},
                              {0.13, 0.64, 0.420, -0.02, 0.2}, {0.22, 0.80, 0.425, 0.10, 0.15},
                              {0.32, 0.90, 0.430, 0.26, 0.1},  {0.42, 0.97, 0.435, 0.40, 0.1},
                              {0.50, 0.98, 0.415, 0.47, 0.1},  {0.575, 0.99, 0.455, 0.51, 0.1},
                              {0.70, 1.00, 0.445, 0.53, 0.08}, {0.82, 0.93, 0.385, 0.48, 0.05},
                              {0.91, 0.74, 0.275, 0.37, 0.0},  {0.97, 0.44, 0.140, 0.22, 0.0}};
constexpr Slice kHerHead[] = {{0.00, 0.22, 0.375, -0.22, 0.1},  {0.05, 0.36, 0.410, -0.16, 0.15},
                              {0.13, 0.56, 0.410, -0.04, 0.15}, {0.22, 0.74, 0.420, 0.10, 0.1},
                              {0.32, 0.87, 0.425, 0.26, 0.1},   {0.42, 0.95, 0.430, 0.40, 0.1},
                              {0.50, 0.97, 0.418, 0.47, 0.1},   {0.575, 0.985, 0.442, 0.51, 0.1},
                              {0.70, 1.00, 0.445, 0.53, 0.08},  {0.82, 0.93, 0.390, 0.48, 0.05},
                              {0.91, 0.74, 0.280, 0.37, 0.0},   {0.97, 0.44, 0.140, 0.22, 0.0}};

/// Heads are looked at closest.
Fineness roundFineness(Fineness fine) {
  fine.around = fine.around * 4 / 3;
  return fine;
}

/// Opens the jaw: what lies below the mouth turns down about the ears.
Vec3 jawed(const Vec3& p, double jawDeg, double share) {
  const double angle = -jawDeg * share * std::numbers::pi / 180;
  const double c = std::cos(angle), s = std::sin(angle);
  const double up = p.y() - 0.10,
               front = p.z();  // about the ear, metres are not needed: both scale
  return {p.x(), 0.10 + c * up + s * front, -s * up + c * front};
}

/// `p` in head units: x half breadths, y head heights above the chin, z head depths.
Vec3 placed(const Sculpt& s, const Vec3& p) {
  const Body& b = s.body;
  return s.skeleton[Joint::Head] + s.skeleton.frameOf(Joint::Head) *
                                       Vec3(0.5 * p.x() * b.headBreadth,
                                            (p.y() - kHeadUp) * b.headHeight, p.z() * b.headDepth);
}

Ring ringOf(const Sculpt& s, const Slice& slice) {
  const Mat3& frame = s.skeleton.frameOf(Joint::Head);
  const double middle = 0.5 * (slice.front - slice.back);
  const double reach = 0.5 * (slice.front + slice.back);
  const double share = slice.up < 0.15 ? 1 : slice.up < 0.25 ? 0.35 : 0;
  const Vec3 centre = jawed({0, slice.up, middle}, s.skeleton.jawDeg, share);
  const Body& b = s.body;
  return ringAt(placed(s, centre), frame,
                {0.5 * slice.half * b.headBreadth, 0.5 * slice.half * b.headBreadth,
                 reach * b.headDepth, reach * b.headDepth},
                1, 1, slice.square);
}

void addNose(Sculpt& s) {
  const Body& b = s.body;
  const Mat3& frame = s.skeleton.frameOf(Joint::Head);
  const double big = b.sex == Sex::Male ? 1.0 : 0.86;
  const auto ring = [&](double up, double half, double front) {
    const double back = 0.36;
    return ringAt(placed(s, {0, up, 0.5 * (front + back)}), frame,
                  {half * b.headBreadth, half * b.headBreadth, 0.5 * (front - back) * b.headDepth,
                   0.5 * (front - back) * b.headDepth},
                  1, 1);
  };
  std::vector<Ring> rings{
      ring(0.295, 0.09 * big, 0.36 + 0.11 * big), ring(0.335, 0.105 * big, 0.36 + 0.165 * big),
      ring(0.42, 0.075 * big, 0.36 + 0.115 * big), ring(0.545, 0.06 * big, 0.36 + 0.065)};
  Fineness fine = s.fine;
  fine.around = std::max(6, fine.around / 2);
  addLoft(s.mesh, smoothed(rings, std::min(2, fine.along)), {0.01 * b.headHeight, 0}, fine,
          BodyPart::Head);
}

void addEars(Sculpt& s) {
  const Body& b = s.body;
  for (const double side : {-1.0, 1.0})
    addEgg(s, placed(s, {side * 0.99, 0.44, -0.02}), s.skeleton.frameOf(Joint::Head),
           Vec3(0.05 * b.headBreadth, 0.12 * b.headHeight, 0.085 * b.headDepth), BodyPart::Head);
}

void addHairMass(Sculpt& s, const std::vector<Slice>& slices, double cap) {
  std::vector<Ring> rings;
  for (const Slice& slice : slices) rings.push_back(ringOf(s, slice));
  addLoft(s.mesh, smoothed(rings, std::min(2, s.fine.along)), {0.0, cap * s.body.headHeight},
          roundFineness(s.fine), BodyPart::Hair);
}

/// The hair on the skull itself. Below the hairline its front lies inside the face.
std::vector<Slice> skullHair(double thick, double from, double sides) {
  const double t = thick;
  std::vector<Slice> all{{0.20, 0.46, -0.10, 0.33 + t, 0},
                         {0.34, 0.86, -0.02, 0.43 + t, 0},
                         {0.50, sides, 0.06, 0.50 + t, 0},
                         {0.64, 1.04 + t, 0.20, 0.54 + t, 0},
                         {0.76, 1.03 + t, 0.37, 0.54 + t, 0},
                         {0.84, 1.00 + t, 0.392 + 0.35 * t, 0.50 + t, 0},
                         {0.93, 0.80 + t, 0.29 + 0.7 * t, 0.40 + t, 0},
                         {0.995, 0.48 + t, 0.16 + t, 0.24 + t, 0}};
  std::erase_if(all, [&](const Slice& slice) { return slice.up < from; });
  return all;
}

void addTail(Sculpt& s) {
  const Mat3& head = s.skeleton.frameOf(Joint::Head);
  const Body& b = s.body;
  std::vector<Ring> rings;
  const double h = b.headHeight;
  Vec3 at = placed(s, {0, 0.80, -0.50});
  Vec3 along = -head.col(2);
  // Hangs: starts along the head's back and turns toward the ground.
  constexpr double kThick[] = {0.07, 0.13, 0.13, 0.11, 0.06};
  for (int i = 0; i < 5; ++i) {
    Mat3 frame;
    frame.col(1) = along;
    frame.col(0) = head.col(0);
    frame.col(0) = (frame.col(0) - frame.col(0).dot(along) * along).normalized();
    frame.col(2) = frame.col(0).cross(along);
    const double r = kThick[i];
    rings.push_back(ringAt(at, frame, {r, r, r, r}, 1, h));
    along = (along + 0.75 * Vec3(0, -1, 0)).normalized();
    at += 0.20 * h * along;
  }
  addLoft(s.mesh, smoothed(rings, s.fine.along), {0.03 * h, 0.06 * h}, s.fine, BodyPart::Hair);
}

void addLongHair(Sculpt& s, double down) {
  const std::vector<Slice> below{{-down, 0.55, -0.16, 0.34, 0.1},
                                 {-0.5 * down, 1.00, -0.06, 0.50, 0.1},
                                 {0.10, 1.14, 0.02, 0.56, 0.1},
                                 {0.30, 1.18, 0.04, 0.58, 0.1}};
  std::vector<Slice> all = below;
  for (const Slice& slice : skullHair(0.07, 0.45, 1.12)) all.push_back(slice);
  addHairMass(s, all, 0.05);
}

void addCap(Sculpt& s) {
  addHairMass(
      s, {{0.30, 0.80, 0.0, 0.42, 0}, {0.42, 0.98, 0.02, 0.48, 0}, {0.56, 1.01, 0.10, 0.52, 0}},
      0.02);
  addHairMass(s,
              {{0.66, 1.10, 0.50, 0.57, 0.05},
               {0.72, 1.13, 0.515, 0.585, 0.05},
               {0.80, 1.10, 0.49, 0.57, 0.05},
               {0.90, 0.98, 0.41, 0.50, 0},
               {1.00, 0.66, 0.26, 0.34, 0}},
              0.06);
}

}  // namespace

void addHead(Sculpt& s) {
  std::vector<Ring> rings;
  const bool his = s.body.sex == Sex::Male && s.body.muscle > 0.75;
  for (const Slice& slice : his ? kHisHead : kHerHead) rings.push_back(ringOf(s, slice));
  addLoft(s.mesh, smoothed(rings, std::min(2, s.fine.along)), {0.0, 0.03 * s.body.headHeight},
          roundFineness(s.fine), BodyPart::Head);
  addNose(s);
  addEars(s);
}

void addHair(Sculpt& s) {
  switch (s.body.hair) {
    case Hair::Bald:
      return;
    case Hair::Cap:
      return addCap(s);
    case Hair::Short:
      return addHairMass(s, skullHair(0.03, 0.3, 1.0), 0.05);
    case Hair::Bob:
      return addLongHair(s, 0.06);
    case Hair::Long:
      return addLongHair(s, 0.55);
    case Hair::Tail:
      addHairMass(s, skullHair(0.02, 0.2, 1.0), 0.045);
      return addTail(s);
    case Hair::Bun:
      break;
  }
  addHairMass(s, skullHair(0.02, 0.2, 1.0), 0.045);
  const double r = 0.19 * s.body.headHeight;
  addEgg(s, placed(s, {0, 0.90, -0.50}), s.skeleton.frameOf(Joint::Head), Vec3(r, r, 0.85 * r),
         BodyPart::Hair);
}

}  // namespace tw
