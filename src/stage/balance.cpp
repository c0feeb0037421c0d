// Segment masses and mass centres: Winter DA (2009) Biomechanics and Motor Control of Human
// Movement, Table 4.1 (after Dempster 1955). The masses sum to exactly 1.
#include "stage/figure.h"
#include "stage/figure_proportions.h"

namespace tw {
namespace {

struct Segment {
  Joint from, to;
  double mass, share;  ///< share of the way from → to at which the mass lies
};

constexpr double kTrunkMass = 0.497, kHeadMass = 0.081;
constexpr double kEarUp = 0.30;  // ear canal above the chin / head height: 0.909 of stature

constexpr Segment kLimbs[] = {{Joint::LeftShoulder, Joint::LeftElbow, 0.028, 0.436},
                              {Joint::LeftElbow, Joint::LeftWrist, 0.016, 0.430},
                              {Joint::LeftWrist, Joint::LeftFingertip, 0.006, 0.506},
                              {Joint::LeftHip, Joint::LeftKnee, 0.100, 0.433},
                              {Joint::LeftKnee, Joint::LeftAnkle, 0.0465, 0.433},
                              {Joint::LeftAnkle, Joint::LeftToe, 0.0145, 0.500},
                              {Joint::RightShoulder, Joint::RightElbow, 0.028, 0.436},
                              {Joint::RightElbow, Joint::RightWrist, 0.016, 0.430},
                              {Joint::RightWrist, Joint::RightFingertip, 0.006, 0.506},
                              {Joint::RightHip, Joint::RightKnee, 0.100, 0.433},
                              {Joint::RightKnee, Joint::RightAnkle, 0.0465, 0.433},
                              {Joint::RightAnkle, Joint::RightToe, 0.0145, 0.500}};

}  // namespace

Vec3 centreOfMass(const Body& body, const Skeleton& skeleton) {
  Vec3 sum = Vec3::Zero();
  for (const Segment& s : kLimbs)
    sum += s.mass * (skeleton[s.from] + s.share * (skeleton[s.to] - skeleton[s.from]));
  const Vec3 shoulders = 0.5 * (skeleton[Joint::LeftShoulder] + skeleton[Joint::RightShoulder]);
  sum += kTrunkMass * 0.5 * (shoulders + skeleton[Joint::Pelvis]);
  const Vec3 chinUp = skeleton.frameOf(Joint::Head).col(1) * kEarUp * body.headHeight;
  const Vec3 axis =
      skeleton[Joint::Head] - skeleton.frameOf(Joint::Head).col(1) * kHeadUp * body.headHeight;
  return sum + kHeadMass * (axis + chinUp);
}

}  // namespace tw
