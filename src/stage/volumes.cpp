#include "stage/volumes.h"

#include <algorithm>

namespace tw {
namespace {

Vec3 middle(const Skeleton& s, Joint a, Joint b) {
  return (s[a] + s[b]) / 2;
}

struct Station {
  double heightShare;
  Vec3 at;
};

std::array<Station, 8> stationsOf(const Skeleton& s) {
  return {{{1.0, s[Joint::Crown]},
           {0.870, s[Joint::Chin]},
           {0.818, middle(s, Joint::LeftShoulder, Joint::RightShoulder)},
           {0.720, s[Joint::Chest]},
           {0.530, middle(s, Joint::LeftHip, Joint::RightHip)},
           {0.285, middle(s, Joint::LeftKnee, Joint::RightKnee)},
           {0.039, middle(s, Joint::LeftAnkle, Joint::RightAnkle)},
           {0.0, middle(s, Joint::LeftToe, Joint::RightToe)}}};
}

class Builder {
 public:
  Builder(const Skeleton& s, double heft) : s_(s), heft_(heft) {}
  void add(Joint a, Joint b, double ra, double rb, Level level) {
    addPoints(s_[a], s_[b], ra, rb, level);
  }
  void addPoints(const Vec3& a, const Vec3& b, double ra, double rb, Level level) {
    all[n_++] = {a, b, ra * heft_, rb * heft_, level};
  }
  Volumes all;

 private:
  const Skeleton& s_;
  double heft_;
  std::size_t n_ = 0;
};

void addLimbs(Builder& b, double h) {
  using enum Joint;
  const std::array<std::array<Joint, 4>, 2> arms{
      {{LeftShoulder, LeftElbow, LeftWrist, LeftFingertip},
       {RightShoulder, RightElbow, RightWrist, RightFingertip}}};
  for (const auto& arm : arms) {
    b.add(arm[0], arm[1], 0.033 * h, 0.025 * h, Level::Arm);
    b.add(arm[1], arm[2], 0.025 * h, 0.017 * h, Level::Arm);
    b.add(arm[2], arm[3], 0.022 * h, 0.014 * h, Level::Hand);
  }
  const std::array<std::array<Joint, 4>, 2> legs{
      {{LeftHip, LeftKnee, LeftAnkle, LeftToe}, {RightHip, RightKnee, RightAnkle, RightToe}}};
  for (const auto& leg : legs) {
    b.add(leg[0], leg[1], 0.052 * h, 0.034 * h, Level::Thigh);
    b.add(leg[1], leg[2], 0.034 * h, 0.021 * h, Level::Shank);
    b.add(leg[2], leg[3], 0.024 * h, 0.014 * h, Level::Foot);
  }
}

}  // namespace

Volumes volumesOf(const Body& body, const Skeleton& s) {
  using enum Joint;
  const double h = body.stature;
  // Clothes stand off the body.
  Builder b(s, body.heft * (body.look.clothed ? 1 + 0.12 * body.look.topEase : 1));
  const Vec3 axis = s[Crown] - s[Chin];
  const double skull = 0.41 * axis.norm() / body.heft;
  b.addPoints(s[Chin] + axis * 0.41, s[Chin] + axis * 0.59, skull, skull, Level::Head);
  // A bun stands out from the skull and must not be cut by the frame; other hair lies close.
  const bool bun = body.look.hairCut == Hair::Bun;
  const Vec3 knot = s[Chin] + 0.9 * axis - headFront(s) * (bun ? 0.75 : 0.4) * body.headDepth;
  const double knotRadius = (bun ? 0.19 : 0.1) * body.headHeight / body.heft;
  b.addPoints(knot, knot, knotRadius, knotRadius, Level::Head);
  b.add(Neck, Head, 0.033 * h, 0.031 * h, Level::Head);
  b.add(LeftShoulder, RightShoulder, 0.036 * h, 0.036 * h, Level::Shoulders);
  b.add(Neck, Chest, 0.05 * h, 0.075 * h, Level::Shoulders);
  b.addPoints(middle(s, LeftShoulder, Chest), middle(s, LeftHip, Waist), 0.05 * h, 0.05 * h,
              Level::Torso);
  b.addPoints(middle(s, RightShoulder, Chest), middle(s, RightHip, Waist), 0.05 * h, 0.05 * h,
              Level::Torso);
  b.add(Chest, Pelvis, 0.075 * h, 0.075 * h, Level::Torso);
  b.add(LeftHip, RightHip, 0.055 * h, 0.055 * h, Level::Hips);
  addLimbs(b, h);
  return b.all;
}

Vec3 headMiddle(const Skeleton& s) {
  return middle(s, Joint::Crown, Joint::Chin);
}

Vec3 landmark(const Skeleton& s, double heightShare) {
  const auto stations = stationsOf(s);
  for (std::size_t i = 1; i < stations.size(); ++i) {
    if (heightShare < stations[i].heightShare) continue;
    const double span = stations[i - 1].heightShare - stations[i].heightShare;
    const double t = std::clamp((heightShare - stations[i].heightShare) / span, 0.0, 1.0);
    return stations[i].at + (stations[i - 1].at - stations[i].at) * t;
  }
  return stations.back().at;
}

Vec3 bodyFront(const Skeleton& s) {
  return s.frame[static_cast<std::size_t>(Joint::Pelvis)].col(2);
}
Vec3 headFront(const Skeleton& s) {
  return s.frame[static_cast<std::size_t>(Joint::Head)].col(2);
}

}  // namespace tw
