// Hair as masses: a shell on the skull that leaves the face free, and what hangs or stands off it
// (locks, curls, knot, plait, fall). Beard and moustache are masses on the jaw. The shells are
// lofts like the head's; below the hairline their front lies inside the face.
#include <cmath>
#include <numbers>

#include "stage/body_parts.h"

namespace tw {
namespace {

using Mat3 = Eigen::Matrix3d;
using Slices = std::vector<HeadSlice>;

void addMass(Sculpt& s, const Slices& slices, double cap) {
  std::vector<Ring> rings;
  rings.reserve(slices.size());
  for (const HeadSlice& slice : slices) rings.push_back(headRing(s, slice));
  addLoft(s.mesh, smoothed(rings, std::min(2, s.fine.along)), {0.0, cap * s.body.headHeight},
          headFineness(s.fine), BodyPart::Hair);
}

/// The hair on the skull itself.
Slices skullHair(double thick, double from, double sides) {
  const double t = thick;
  Slices all{{0.20, 0.46, -0.10, 0.33 + t, 0},
             {0.34, 0.86, -0.02, 0.43 + t, 0},
             {0.50, sides, 0.06, 0.50 + t, 0},
             {0.64, 1.04 + t, 0.20, 0.54 + t, 0},
             {0.76, 1.03 + t, 0.37, 0.54 + t, 0},
             {0.84, 1.00 + t, 0.392 + 0.35 * t, 0.50 + t, 0},
             {0.93, 0.80 + t, 0.29 + 0.7 * t, 0.40 + t, 0},
             {0.995, 0.48 + t, 0.16 + t, 0.24 + t, 0}};
  std::erase_if(all, [&](const HeadSlice& slice) { return slice.up < from; });
  return all;
}

constexpr int kFineCaps = 2;  // coarser heads serve measures, which do not ask for locks

/// A tapered lock from one place on the head to another, bowed outward in the middle.
void addLock(Sculpt& s, const Vec3& from, const Vec3& to, double thick, double bow) {
  if (s.fine.caps < kFineCaps) return;
  const Vec3 a = onHead(s, from), b = onHead(s, to), middle = onHead(s, {0, 0.55, 0});
  const Vec3 out = (0.5 * (a + b) - middle).normalized();
  const Mat3& head = s.skeleton.frameOf(Joint::Head);
  const double h = s.body.headHeight;
  constexpr double kShare[] = {0.0, 0.45, 1.0}, kThick[] = {0.8, 1.0, 0.3};
  std::vector<Ring> rings;
  Mat3 frame;
  frame.col(1) = (b - a).normalized();
  frame.col(2) = (out - out.dot(frame.col(1)) * frame.col(1)).normalized();
  frame.col(0) = frame.col(1).cross(frame.col(2));
  if (!frame.allFinite()) frame = head;
  for (int i = 0; i < 3; ++i) {
    const Vec3 at = a + kShare[i] * (b - a) + (i == 1 ? bow * h : 0.0) * out;
    const double r = kThick[i] * thick;
    rings.push_back(ringAt(at, frame, {1.3 * r, 1.3 * r, 0.7 * r, 0.7 * r}, 1, h));
  }
  Fineness fine = s.fine;
  fine.around = std::max(5, fine.around / 2);
  fine.caps = 1;
  addLoft(s.mesh, smoothed(rings, std::min(2, fine.along)), {0.02 * h, 0.03 * h}, fine,
          BodyPart::Hair);
}

/// Cropped: locks swept from a parting over the forehead, and sideburns.
void addShort(Sculpt& s) {
  addLock(s, {0.62, 0.93, 0.24}, {0.16, 0.745, 0.455}, 0.06, 0.035);
  addLock(s, {0.52, 0.97, 0.20}, {-0.24, 0.77, 0.45}, 0.07, 0.045);
  addLock(s, {0.36, 1.01, 0.16}, {-0.62, 0.74, 0.40}, 0.075, 0.05);
  addLock(s, {0.10, 1.03, 0.08}, {-0.92, 0.70, 0.24}, 0.08, 0.05);
  addLock(s, {0.72, 0.93, 0.16}, {0.86, 0.70, 0.32}, 0.06, 0.03);
  for (const double side : {-1.0, 1.0})
    addLock(s, {side * 0.95, 0.80, 0.12}, {side * 0.965, 0.47, 0.11}, 0.055, 0.0);
}

void addCurls(Sculpt& s) {
  struct Curl {
    double x, y, z, r;
  };
  constexpr Curl kCurls[] = {
      {0.0, 1.0, 0.22, 0.13},    {0.55, 0.97, 0.20, 0.12},  {-0.55, 0.97, 0.20, 0.12},
      {0.90, 0.80, 0.08, 0.12},  {-0.90, 0.80, 0.08, 0.12}, {1.0, 0.62, -0.10, 0.11},
      {-1.0, 0.62, -0.10, 0.11}, {0.0, 0.98, -0.25, 0.14},  {0.6, 0.78, -0.42, 0.14},
      {-0.6, 0.78, -0.42, 0.14}, {0.35, 0.90, 0.34, 0.09},  {-0.30, 0.91, 0.35, 0.10},
      {0.5, 0.48, -0.44, 0.12},  {-0.5, 0.48, -0.44, 0.12}};
  const double h = s.body.headHeight;
  for (const Curl& c : kCurls)
    addEgg(s, onHead(s, {c.x, c.y, c.z}), s.skeleton.frameOf(Joint::Head), Vec3::Constant(c.r * h),
           BodyPart::Hair);
}

/// A plait or tail: starts along the head's back and turns toward the ground.
void addTail(Sculpt& s) {
  const Mat3& head = s.skeleton.frameOf(Joint::Head);
  const double h = s.body.headHeight;
  Vec3 at = onHead(s, {0, 0.80, -0.50});
  Vec3 along = -head.col(2);
  constexpr double kThick[] = {0.07, 0.13, 0.13, 0.11, 0.06};
  std::vector<Ring> rings;
  for (const double r : kThick) {
    Mat3 frame;
    frame.col(1) = along;
    frame.col(0) = head.col(0);
    frame.col(0) = (frame.col(0) - frame.col(0).dot(along) * along).normalized();
    frame.col(2) = frame.col(0).cross(along);
    rings.push_back(ringAt(at, frame, {r, r, r, r}, 1, h));
    along = (along + 0.75 * Vec3(0, -1, 0)).normalized();
    at += 0.20 * h * along;
  }
  addLoft(s.mesh, smoothed(rings, s.fine.along), {0.03 * h, 0.06 * h}, s.fine, BodyPart::Hair);
}

/// Hair that hangs `down` head heights below the chin.
Slices hangingHair(double down) {
  Slices all{{-down, 0.55, -0.16, 0.34, 0.1},
             {-0.5 * down, 1.00, -0.06, 0.50, 0.1},
             {0.10, 1.14, 0.02, 0.56, 0.1},
             {0.30, 1.18, 0.04, 0.58, 0.1}};
  for (const HeadSlice& slice : skullHair(0.07, 0.45, 1.12)) all.push_back(slice);
  return all;
}

void addFall(Sculpt& s) {
  addLock(s, {0.25, 0.99, 0.24}, {-0.95, 0.66, 0.30}, 0.07, 0.06);
  addLock(s, {0.35, 0.98, 0.24}, {1.0, 0.66, 0.28}, 0.06, 0.05);
}

void addBun(Sculpt& s) {
  const double r = 0.19 * s.body.headHeight;
  addEgg(s, onHead(s, {0, 0.90, -0.50}), s.skeleton.frameOf(Joint::Head), Vec3(r, r, 0.85 * r),
         BodyPart::Hair);
}

}  // namespace

std::vector<HeadSlice> hairShell(Hair cut) {
  switch (cut) {
    case Hair::Bald:
      return {};
    case Hair::Short:
      return skullHair(0.045, 0.3, 1.0);
    case Hair::Curly:
      return skullHair(0.05, 0.3, 1.02);
    case Hair::Bob:
      return hangingHair(0.06);
    case Hair::Long:
      return hangingHair(0.55);
    case Hair::Tail:
    case Hair::Bun:
      return skullHair(0.03, 0.2, 1.0);
  }
  return {};
}

void addHair(Sculpt& s) {
  const Hair cut = s.body.look.hairCut;
  if (cut == Hair::Bald) return;
  addMass(s, hairShell(cut), cut == Hair::Short ? 0.07 : cut == Hair::Curly ? 0.06 : 0.05);
  if (cut == Hair::Short) addShort(s);
  if (cut == Hair::Curly) addCurls(s);
  if (cut == Hair::Bob || cut == Hair::Long) addFall(s);
  if (cut == Hair::Tail) addTail(s);
  if (cut == Hair::Bun) addBun(s);
}

/// The beard leaves lips and cheeks free: its front lies inside the face from the mouth up.
void addBeard(Sculpt& s) {
  const Look& look = s.body.look;
  if (look.beard)
    addMass(s,
            {{-0.16, 0.26, 0.40, -0.12, 0.1},
             {-0.06, 0.56, 0.47, -0.06, 0.15},
             {0.05, 0.74, 0.485, -0.02, 0.2},
             {0.125, 0.80, 0.47, 0.02, 0.15},
             {0.165, 0.86, 0.395, 0.02, 0.1},
             {0.26, 0.93, 0.32, 0.0, 0.1},
             {0.40, 1.01, 0.22, -0.02, 0.1},
             {0.56, 1.02, 0.16, 0.0, 0.0}},
            0.01);
  if (!look.moustache) return;
  for (const double side : {-1.0, 1.0})
    addLock(s, {side * 0.02, 0.262, 0.475}, {side * 0.46, 0.165, 0.40}, 0.042, 0.01);
}

}  // namespace tw
