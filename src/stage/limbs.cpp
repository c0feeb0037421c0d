#include "stage/limbs.h"

#include <cmath>

#include "stage/rasterise.h"

namespace tw {
namespace {

struct Ends {
  std::string_view name;
  Joint from, to;
};

const Ends& endsOf(Limb limb) {
  using enum Joint;
  static const PerLimb<Ends> kEnds{{{"head", Chin, Crown},
                                    {"trunk", Pelvis, Neck},
                                    {"left upper arm", LeftShoulder, LeftElbow},
                                    {"right upper arm", RightShoulder, RightElbow},
                                    {"left forearm", LeftElbow, LeftWrist},
                                    {"right forearm", RightElbow, RightWrist},
                                    {"left hand", LeftWrist, LeftFingertip},
                                    {"right hand", RightWrist, RightFingertip},
                                    {"left thigh", LeftHip, LeftKnee},
                                    {"right thigh", RightHip, RightKnee},
                                    {"left shank", LeftKnee, LeftAnkle},
                                    {"right shank", RightKnee, RightAnkle},
                                    {"left foot", LeftAnkle, LeftToe},
                                    {"right foot", RightAnkle, RightToe}}};
  return kEnds[static_cast<std::size_t>(limb)];
}

}  // namespace

std::string_view nameOf(Limb limb) {
  return endsOf(limb).name;
}

Limb limbOf(BodyPart part) {
  switch (part) {
    case BodyPart::Head:
    case BodyPart::Hair:
    case BodyPart::Hat:
      return Limb::Head;
    case BodyPart::LeftArm:
      return Limb::LeftUpperArm;
    case BodyPart::RightArm:
      return Limb::RightUpperArm;
    case BodyPart::LeftForearm:
      return Limb::LeftForearm;
    case BodyPart::RightForearm:
      return Limb::RightForearm;
    case BodyPart::LeftHand:
      return Limb::LeftHand;
    case BodyPart::RightHand:
      return Limb::RightHand;
    case BodyPart::LeftLeg:
      return Limb::LeftThigh;
    case BodyPart::RightLeg:
      return Limb::RightThigh;
    case BodyPart::LeftShank:
      return Limb::LeftShank;
    case BodyPart::RightShank:
      return Limb::RightShank;
    case BodyPart::LeftFoot:
      return Limb::LeftFoot;
    case BodyPart::RightFoot:
      return Limb::RightFoot;
    default:
      return Limb::Trunk;
  }
}

Limb mirrored(Limb limb) {
  const auto i = static_cast<std::uint8_t>(limb);
  if (limb < Limb::LeftUpperArm) return limb;
  return static_cast<Limb>(i % 2 == 0 ? i + 1 : i - 1);
}

double foreshortening(Limb limb, const Skeleton& skeleton, const Camera& camera) {
  const Vec3 &a = skeleton[endsOf(limb).from], &b = skeleton[endsOf(limb).to];
  if (std::min(camera.depth(a), camera.depth(b)) < kNearM) return 0;
  const double onPicture = (camera.projectAlways(b) - camera.projectAlways(a)).length();
  const double metres = onPicture * camera.depth((a + b) / 2) / camera.intrinsics()(0, 0);
  return metres / (b - a).norm();
}

}  // namespace tw
