// Trunk, shoulders and neck. The trunk is one loft: rings of the pelvis keep the pelvis's frame,
// those of the rib cage the chest's, and the waist between them bends.
#include <algorithm>

#include "stage/body_parts.h"
#include "stage/figure_proportions.h"

namespace tw {
namespace {

using Mat3 = Eigen::Matrix3d;

constexpr double kDrawnWaist = 0.86;  // of ANSUR's mean: artists draw the trained body
constexpr double kDrawnWaistHer = 0.78;
constexpr std::size_t kBeltRing = 4;
constexpr double kSkinTight = 0.3;      // a top tighter than this shows the chest's forms
constexpr double kCoversSeat = 0.3;     // a coat longer than this hides the seat
constexpr double kClothWaist = 0.13;    // a loose top hides that much of the waist
constexpr double kClothChest = 0.0085;  // of stature: how far a heavy top stands off

/// For forms that lie mostly inside others.
Fineness innerFineness(Fineness fine) {
  fine.caps = 1;
  fine.around = std::max(8, fine.around * 5 / 6);
  return fine;
}

/// One ring of the trunk: whose frame, how high (share of shoulder to hip above the pelvis),
/// half breadth (m), front and back (m), centre to the front (m), squareness.
struct Slice {
  Joint of;
  double up, half, front, back, square;
};

Ring ringOf(const Sculpt& s, const Slice& slice) {
  const double base = slice.of == Joint::Chest ? kChestUp : slice.of == Joint::Waist ? kWaistUp : 0;
  const Mat3& frame = s.skeleton.frameOf(slice.of);
  const Vec3 at = s.skeleton[slice.of] + frame.col(1) * (slice.up - base) * s.body.shoulderToHip;
  return ringAt(at, frame, {slice.half, slice.half, slice.front, slice.back}, 1, 1, slice.square);
}

/// Cloth hangs from the chest's fullest front instead of following every form below it.
void clothe(std::vector<Ring>& rings, bool her, double ease, double unit) {
  const double off = kClothChest * (0.35 + ease) * unit;
  for (std::size_t i = 2; i < rings.size(); ++i) {
    const bool onChest = i >= 7 && i <= 9;
    rings[i].toRight += off;
    rings[i].toLeft += off;
    rings[i].toFront += off + (onChest && her ? 0.012 * unit : 0);
    rings[i].toBack += off;
  }
}

std::vector<Ring> trunkShape(const Sculpt& s) {
  const Body& b = s.body;
  const bool her = b.sex == Sex::Female;
  const double ease = b.look.clothed ? b.look.topEase : 0;
  const double u = s.unit * (0.6 + 0.4 * b.heft);
  const double hip = 0.5 * b.hipBreadth, chest = 0.5 * b.chestBreadth;
  const double waist =
      0.5 * b.waistBreadth * (her ? kDrawnWaistHer : kDrawnWaist) * (1 + kClothWaist * ease);
  const double deep = b.chestDepth, belly = b.waistBreadth / (0.185 * s.unit);
  const Slice slices[] = {
      {Joint::Pelvis, -0.19, 0.34 * hip, 0.030 * u, 0.038 * u, 0.1},
      {Joint::Pelvis, -0.10, 0.74 * hip, 0.048 * u, 0.060 * u, 0.1},
      {Joint::Pelvis, 0.02, 0.92 * hip, 0.056 * u, 0.070 * u, 0.1},
      {Joint::Pelvis, 0.14, 0.93 * hip, 0.059 * u, 0.064 * u, 0.1},
      {Joint::Pelvis, 0.26, (her ? 0.80 : 0.89) * hip, 0.057 * u * belly, 0.052 * u, 0.1},
      {Joint::Waist, 0.42, waist, 0.050 * u * belly, 0.046 * u, 0.1},
      {Joint::Chest, 0.54, 0.56 * waist + 0.42 * chest, 0.34 * deep, 0.38 * deep, 0.1},
      {Joint::Chest, 0.66, (her ? 0.92 : 0.98) * chest, 0.42 * deep, 0.46 * deep, 0.12},
      {Joint::Chest, 0.78, (her ? 0.98 : 1.06) * chest, 0.45 * deep, 0.50 * deep, 0.15},
      {Joint::Chest, 0.90, (her ? 0.97 : 1.08) * chest, 0.42 * deep, 0.52 * deep, 0.15},
      {Joint::Chest, 0.98, 0.80 * chest, 0.33 * deep, 0.48 * deep, 0.1},
      {Joint::Chest, 1.05, 0.56 * chest, 0.19 * deep, 0.43 * deep, 0},
      {Joint::Chest, 1.13, 0.40 * chest, 0.05 * deep, 0.37 * deep, 0}};
  std::vector<Ring> rings;
  for (const Slice& slice : slices) rings.push_back(ringOf(s, slice));
  if (b.look.clothed) clothe(rings, her, ease, s.unit);
  return rings;
}

/// A frame whose up runs along `along`, turned as little as possible out of `like`.
Mat3 frameAlong(const Vec3& along, const Vec3& front) {
  Mat3 frame;
  frame.col(1) = along.normalized();
  frame.col(2) = (front - front.dot(frame.col(1)) * frame.col(1)).normalized();
  frame.col(0) = frame.col(1).cross(frame.col(2));
  return frame;
}

void addBreastOrPectoral(Sculpt& s, bool left) {
  const Body& b = s.body;
  const Mat3& chest = s.skeleton.frameOf(Joint::Chest);
  const double side = sideOf(left), u = s.unit;
  const bool her = b.sex == Sex::Female && b.muscle > 0.75;
  const double up = (her ? 0.75 : 0.83) * b.shoulderToHip - kChestUp * b.shoulderToHip;
  const Vec3 at(side * (her ? 0.48 : 0.46) * 0.5 * b.chestBreadth * (her ? 1 : 1.05), up,
                (her ? 0.31 : 0.22) * b.chestDepth);
  const Vec3 radii = her ? Vec3(0.037, 0.041, 0.029) * u * (0.4 + 0.6 * b.heft)
                         : Vec3(0.046 * u, 0.034 * u * b.muscle, 0.031 * u);
  addEgg(s, s.skeleton[Joint::Chest] + chest * at, chest, radii, BodyPart::Torso);
}

/// Collar bone, its muscle and the shoulder's top, from the breast bone out to the joint.
void addGirdle(Sculpt& s, bool left, const Vec3& shoulder) {
  const Mat3& chest = s.skeleton.frameOf(Joint::Chest);
  const double side = sideOf(left), u = s.unit * (0.65 + 0.35 * s.body.muscle);
  const Vec3 inner =
      s.skeleton[Joint::Chest] +
      chest * Vec3(side * 0.03 * s.unit, 0.33 * s.body.shoulderToHip, -0.04 * s.body.chestDepth);
  const Mat3 frame = frameAlong(shoulder - inner, chest.col(2));
  std::vector<Ring> rings;
  const double upward = frame.col(0).dot(chest.col(1));
  const auto ring = [&](double share, double top, double under, double front, double back) {
    rings.push_back(ringAt(inner + share * (shoulder - inner), frame,
                           {top * u, under * u, front * u, back * u}, upward > 0 ? 1 : -1, 1));
  };
  ring(0, 0.036, 0.098, 0.043, 0.060);
  ring(0.5, 0.036, 0.090, 0.047, 0.054);
  ring(0.92, 0.034, 0.060, 0.039, 0.040);
  addLoft(s.mesh, rings, {0.02 * u, 0.028 * u}, innerFineness(s.fine), BodyPart::Torso);
}

/// The slope from the neck to the tip of the shoulder.
void addTrapezius(Sculpt& s, bool left, const Vec3& shoulder) {
  const Mat3& chest = s.skeleton.frameOf(Joint::Chest);
  const double side = sideOf(left);
  const double u = s.unit * (s.body.sex == Sex::Male ? 1.0 : 0.8) * (0.5 + 0.5 * s.body.muscle);
  const Vec3 top = s.skeleton[Joint::Neck] +
                   s.skeleton.frameOf(Joint::Neck) * Vec3(side * 0.012, 0.034, 0.004) * s.unit;
  const Vec3 tip = shoulder + chest * Vec3(-side * 0.006, 0.020, -0.006) * s.unit;
  const Mat3 frame = frameAlong(tip - top, chest.col(2));
  std::vector<Ring> rings;
  const Vec3 sag = chest.col(1) * (-0.003 * s.unit);
  rings.push_back(ringAt(top, frame, {0.016, 0.016, 0.016, 0.020}, 1, u));
  rings.push_back(
      ringAt(top + 0.45 * (tip - top) + sag, frame, {0.021, 0.021, 0.022, 0.028}, 1, u));
  rings.push_back(ringAt(tip, frame, {0.015, 0.015, 0.016, 0.018}, 1, u));
  addLoft(s.mesh, rings, {0.01 * u, 0.012 * u}, innerFineness(s.fine), BodyPart::Torso);
}

/// Pectoral and broad back muscle: from the side of the ribs to the arm.
void addArmpit(Sculpt& s, bool left, const Vec3& shoulder, const Vec3& elbow) {
  const Mat3& chest = s.skeleton.frameOf(Joint::Chest);
  const double side = sideOf(left), u = s.unit * (0.6 + 0.4 * s.body.muscle);
  const Vec3 low = s.skeleton[Joint::Chest] + chest * Vec3(side * 0.60 * 0.5 * s.body.chestBreadth,
                                                           0.08 * s.body.shoulderToHip,
                                                           -0.06 * s.body.chestDepth);
  const Vec3 high = shoulder + 0.16 * (elbow - shoulder);
  const Vec3 middle = 0.5 * (low + high) + chest.col(0) * (side * 0.006 * s.unit);
  const Mat3 frame = frameAlong(high - low, chest.col(2));
  std::vector<Ring> rings;
  rings.push_back(ringAt(low, frame, {0.020, 0.020, 0.042, 0.038}, side, u));
  rings.push_back(ringAt(middle, frame, {0.030, 0.030, 0.050, 0.040}, side, u));
  rings.push_back(ringAt(high, frame, {0.026, 0.026, 0.037, 0.032}, side, u));
  addLoft(s.mesh, rings, {0.04 * u, 0.015 * u}, innerFineness(s.fine), BodyPart::Torso);
}

void addButtock(Sculpt& s, bool left) {
  const double side = sideOf(left), u = s.unit * (0.6 + 0.4 * s.body.heft);
  const Mat3& pelvis = s.skeleton.frameOf(Joint::Pelvis);
  const Vec3 at = s.skeleton[Joint::Pelvis] +
                  pelvis * Vec3(side * kSeatApart * s.body.hipBreadth, kSeatUp * u, kSeatBack * u);
  const double full = s.body.sex == Sex::Female ? kSeatHers : kSeatHis;
  addEgg(s, at, pelvis, Vec3(kSeatAcross, kSeatHigh, kSeatDeep) * u * full, BodyPart::Hips);
}

/// What lies below the belt belongs to the legs' clothes. `along` is the belt's axis, up or down.
void markHips(Mesh& mesh, std::size_t firstTriangle, const Vec3& belt, Vec3 along) {
  if (along.dot(mesh.points[mesh.triangles[firstTriangle][0]] - belt) > 0) along = -along;
  for (std::size_t t = firstTriangle; t < mesh.triangles.size(); ++t) {
    const auto& corners = mesh.triangles[t];
    const bool below = std::all_of(corners.begin(), corners.end(), [&](std::uint32_t i) {
      return along.dot(mesh.points[i] - belt) < 1e-6;
    });
    if (below) mesh.part[t] = static_cast<std::uint8_t>(BodyPart::Hips);
  }
}

}  // namespace

std::vector<Ring> trunkRings(const Sculpt& sculpt) {
  return trunkShape(sculpt);
}

void addTrunk(Sculpt& sculpt) {
  const std::vector<Ring> rings = trunkShape(sculpt);
  const Ring belt = rings[kBeltRing];
  const std::size_t first = sculpt.mesh.triangles.size();
  addLoft(sculpt.mesh, smoothed(rings, sculpt.fine.along), {0.02 * sculpt.unit, 0.01 * sculpt.unit},
          sculpt.fine, BodyPart::Torso);
  markHips(sculpt.mesh, first, belt.centre, belt.right.cross(belt.front));
  const Look& look = sculpt.body.look;
  for (const bool left : {true, false}) {
    if (!look.clothed || look.topEase < kSkinTight) addBreastOrPectoral(sculpt, left);
    if (look.skirtLength < kCoversSeat) addButtock(sculpt, left);
  }
}

void addShoulders(Sculpt& sculpt, bool left) {
  const Vec3 shoulder = sculpt.skeleton[left ? Joint::LeftShoulder : Joint::RightShoulder];
  const Vec3 elbow = sculpt.skeleton[left ? Joint::LeftElbow : Joint::RightElbow];
  addGirdle(sculpt, left, shoulder);
  addTrapezius(sculpt, left, shoulder);
  addArmpit(sculpt, left, shoulder, elbow);
}

void addNeck(Sculpt& s) {
  const double u = s.unit * (s.body.sex == Sex::Male ? 1.0 : 0.86) * (0.6 + 0.4 * s.body.heft);
  const Mat3& neck = s.skeleton.frameOf(Joint::Neck);
  const Mat3& head = s.skeleton.frameOf(Joint::Head);
  const Vec3 base = s.skeleton[Joint::Neck], skull = s.skeleton[Joint::Head];
  const Vec3 pit = base + neck * Vec3(0, -0.030, 0.012) * s.unit;
  std::vector<Ring> rings;
  rings.push_back(ringAt(pit, neck, {0.044, 0.044, 0.038, 0.044}, 1, u));
  rings.push_back(ringAt(base + 0.35 * (skull - base), neck, {0.035, 0.035, 0.034, 0.040}, 1, u));
  rings.push_back(ringAt(base + 0.8 * (skull - base), head, {0.034, 0.034, 0.032, 0.040}, 1, u));
  rings.push_back(
      ringAt(skull + head.col(1) * 0.01 * s.unit, head, {0.033, 0.033, 0.029, 0.040}, 1, u));
  addLoft(s.mesh, rings, {0.01 * u, 0.012 * u}, s.fine, BodyPart::Neck);
}

}  // namespace tw
