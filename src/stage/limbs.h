// The fourteen limbs that measures tell apart: head, trunk, and left and right upper arm, forearm,
// hand, thigh, shank and foot. Left and right are the figure's own.
#pragma once

#include <array>

#include "stage/camera.h"
#include "stage/figure.h"

namespace tw {

enum class Limb : std::uint8_t {
  Head,   ///< with hair and hat
  Trunk,  ///< with neck, hips, skirt and scarf
  LeftUpperArm,
  RightUpperArm,
  LeftForearm,
  RightForearm,
  LeftHand,
  RightHand,
  LeftThigh,
  RightThigh,
  LeftShank,
  RightShank,
  LeftFoot,
  RightFoot,
  Count
};
inline constexpr std::size_t kLimbs = static_cast<std::size_t>(Limb::Count);
template <class T>
using PerLimb = std::array<T, kLimbs>;

std::string_view nameOf(Limb limb);  ///< "left upper arm"
Limb limbOf(BodyPart part);
/// Left and right exchanged.
Limb mirrored(Limb limb);

/// Length of a limb on the picture over its true length, as if all of it stood as far away as its
/// middle: 1 = parallel to the picture, 0 = along the line of sight; a limb that comes at the eye
/// can exceed 1 (Hartley & Zisserman ch. 6; facts: staging §5.2). 0 when it reaches behind the eye.
double foreshortening(Limb limb, const Skeleton& skeleton, const Camera& camera);

}  // namespace tw
