// A head: one egg-shaped loft from the chin's underside to the crown, with planes for jaw, mouth,
// eyes, brow and forehead; a wedge of a nose, and ears.
#include <cmath>
#include <numbers>

#include "stage/body_parts.h"
#include "stage/figure_proportions.h"

namespace tw {
namespace {

using Mat3 = Eigen::Matrix3d;

constexpr HeadSlice kHisHead[] = {{0.00, 0.30, 0.385, -0.20, 0.2}, {0.05, 0.44, 0.425, -0.14, 0.25},
                                  {0.13, 0.64, 0.420, -0.02, 0.2}, {0.22, 0.80, 0.425, 0.10, 0.15},
                                  {0.32, 0.90, 0.430, 0.26, 0.1},  {0.42, 0.97, 0.435, 0.40, 0.1},
                                  {0.50, 0.98, 0.415, 0.47, 0.1},  {0.575, 0.99, 0.455, 0.51, 0.1},
                                  {0.70, 1.00, 0.445, 0.53, 0.08}, {0.82, 0.93, 0.385, 0.48, 0.05},
                                  {0.91, 0.74, 0.275, 0.37, 0.0},  {0.97, 0.44, 0.140, 0.22, 0.0}};
constexpr HeadSlice kHerHead[] = {
    {0.00, 0.22, 0.375, -0.22, 0.1},  {0.05, 0.36, 0.410, -0.16, 0.15},
    {0.13, 0.56, 0.410, -0.04, 0.15}, {0.22, 0.74, 0.420, 0.10, 0.1},
    {0.32, 0.87, 0.425, 0.26, 0.1},   {0.42, 0.95, 0.430, 0.40, 0.1},
    {0.50, 0.97, 0.418, 0.47, 0.1},   {0.575, 0.985, 0.442, 0.51, 0.1},
    {0.70, 1.00, 0.445, 0.53, 0.08},  {0.82, 0.93, 0.390, 0.48, 0.05},
    {0.91, 0.74, 0.280, 0.37, 0.0},   {0.97, 0.44, 0.140, 0.22, 0.0}};

/// Opens the jaw: what lies below the mouth turns down about the ears.
Vec3 jawed(const Vec3& p, double jawDeg, double share) {
  const double angle = -jawDeg * share * std::numbers::pi / 180;
  const double c = std::cos(angle), s = std::sin(angle);
  const double up = p.y() - 0.10,
               front = p.z();  // about the ear, metres are not needed: both scale
  return {p.x(), 0.10 + c * up + s * front, -s * up + c * front};
}

void addNose(Sculpt& s) {
  const Body& b = s.body;
  const Mat3& frame = s.skeleton.frameOf(Joint::Head);
  const double big = b.sex == Sex::Male ? 1.0 : 0.86;
  const auto ring = [&](double up, double half, double front) {
    const double back = 0.36;
    return ringAt(onHead(s, {0, up, 0.5 * (front + back)}), frame,
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
    addEgg(s, onHead(s, {side * 0.99, 0.44, -0.02}), s.skeleton.frameOf(Joint::Head),
           Vec3(0.05 * b.headBreadth, 0.12 * b.headHeight, 0.085 * b.headDepth), BodyPart::Head);
}

}  // namespace

Fineness headFineness(Fineness fine) {
  fine.around = fine.around * 4 / 3;
  return fine;
}

Vec3 onHead(const Sculpt& s, const Vec3& p) {
  const Body& b = s.body;
  return s.skeleton[Joint::Head] + s.skeleton.frameOf(Joint::Head) *
                                       Vec3(0.5 * p.x() * b.headBreadth,
                                            (p.y() - kHeadUp) * b.headHeight, p.z() * b.headDepth);
}

Ring headRing(const Sculpt& s, const HeadSlice& slice) {
  const Mat3& frame = s.skeleton.frameOf(Joint::Head);
  const double middle = 0.5 * (slice.front - slice.back);
  const double reach = 0.5 * (slice.front + slice.back);
  const double share = slice.up < 0.15 ? 1 : slice.up < 0.25 ? 0.35 : 0;
  const Vec3 centre = jawed({0, slice.up, middle}, s.skeleton.jawDeg, share);
  const Body& b = s.body;
  return ringAt(onHead(s, centre), frame,
                {0.5 * slice.half * b.headBreadth, 0.5 * slice.half * b.headBreadth,
                 reach * b.headDepth, reach * b.headDepth},
                1, 1, slice.square);
}

void addHead(Sculpt& s) {
  std::vector<Ring> rings;
  const bool his = s.body.sex == Sex::Male && s.body.muscle > 0.75;
  for (const HeadSlice& slice : his ? kHisHead : kHerHead) rings.push_back(headRing(s, slice));
  addLoft(s.mesh, smoothed(rings, std::min(2, s.fine.along)), {0.0, 0.03 * s.body.headHeight},
          headFineness(s.fine), BodyPart::Head);
  addNose(s);
  addEars(s);
}

}  // namespace tw
