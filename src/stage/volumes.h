// A posed body as some twenty tapered capsules: enough to frame it and to estimate what is seen
// of it, at a hundredth of the price of its surface. Space and units as in figure.h.
#pragma once

#include <array>
#include <vector>

#include "stage/figure.h"

namespace tw {

enum class Level : std::uint8_t { Head, Shoulders, Torso, Hips, Arm, Hand, Thigh, Shank, Foot };

struct Capsule {
  Vec3 a, b;
  double radiusA = 0, radiusB = 0;
  Level level = Level::Torso;
};
inline constexpr std::size_t kCapsules = 21;
using Volumes = std::array<Capsule, kCapsules>;

Volumes volumesOf(const Body& body, const Skeleton& skeleton);

/// Middle of the head and half its height.
Vec3 headMiddle(const Skeleton& skeleton);
/// Point on the body's chain crown–chin–chest–pelvis–knees–ankles at a height share as if the
/// body stood upright; bent poses keep the landmark, not the height.
Vec3 landmark(const Skeleton& skeleton, double heightShare);
/// Unit direction in which the body, or the head, faces.
Vec3 bodyFront(const Skeleton& skeleton);
Vec3 headFront(const Skeleton& skeleton);

}  // namespace tw
