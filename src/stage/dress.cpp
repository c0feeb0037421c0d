// Values of hair and clothes for a character nobody has described: a small wardrobe, picked by the
// character's id. Chosen so that figures stay mostly paper (the artist's ink decides the rest),
// shoes tie them to the ground, and neighbours in the wardrobe differ in at least two places.
// Common practice, no source.
#include <array>
#include <cstdint>
#include <span>

#include "stage/picture.h"

namespace tw {

namespace {

struct Outfit {
  double hair, top, legs, shoes;
};
constexpr std::array<Outfit, 6> kWardrobe{{{0.88, 0.00, 0.00, 0.80},
                                           {0.30, 0.00, 0.72, 0.90},
                                           {0.88, 0.14, 0.00, 0.60},
                                           {0.14, 0.00, 0.14, 0.80},
                                           {0.60, 0.72, 0.00, 0.80},
                                           {0.88, 0.00, 0.40, 0.90}}};

constexpr double kCollarReach = 0.42;  // head heights

/// FNV-1a, 32 bits: G. Fowler, L. Noll, P. Vo; the constants are public.
std::uint32_t numberOf(const std::string& word) {
  std::uint32_t hash = 2166136261u;
  for (const char c : word) hash = (hash ^ static_cast<std::uint8_t>(c)) * 16777619u;
  return hash;
}

Vec3 between(const Vec3& a, const Vec3& b, double share) {
  return a + share * (b - a);
}

std::uint32_t bit(BodyPart part) {
  return 1u << static_cast<unsigned>(part);
}

/// A seam across a limb at `at`, square to the bone that comes from `from`.
Seam across(const Vec3& from, const Vec3& at, std::uint32_t parts) {
  return {at, (at - from).normalized(), parts};
}

std::vector<Seam> seamsOf(const Skeleton& s) {
  using enum Joint;
  const Vec3 spine = (s[Chest] - s[Pelvis]).normalized();
  std::vector<Seam> seams;
  seams.push_back({between(s[Pelvis], s[Waist], 0.7), spine, bit(BodyPart::Torso)});
  // A collar dips toward the front.
  const Vec3 front = s.frameOf(Chest).col(2);
  seams.push_back({between(s[Neck], s[Head], 0.3), (spine + 0.5 * front).normalized(),
                   bit(BodyPart::Torso) | bit(BodyPart::Head),
                   kCollarReach * (s[Crown] - s[Chin]).norm()});
  seams.push_back(across(s[LeftElbow], s[LeftWrist], bit(BodyPart::LeftArm)));
  seams.push_back(across(s[RightElbow], s[RightWrist], bit(BodyPart::RightArm)));
  for (Seam& cuff : std::span(seams).last(2)) cuff.at -= 0.025 * cuff.normal;
  seams.push_back(across(s[LeftKnee], s[LeftAnkle], bit(BodyPart::LeftLeg)));
  seams.push_back(across(s[RightKnee], s[RightAnkle], bit(BodyPart::RightLeg)));
  for (Seam& hem : std::span(seams).last(2)) hem.at -= 0.04 * hem.normal;
  return seams;
}

}  // namespace

void dress(Solid& solid, const Body& body, const Skeleton& skeleton, const std::string& who) {
  const Outfit& outfit = kWardrobe[(numberOf(who) >> 16) % kWardrobe.size()];
  solid.head = headMarks(body, skeleton);
  solid.seams = seamsOf(skeleton);
  solid.hair = outfit.hair;
  solid.top = outfit.top;
  solid.legs = outfit.legs;
  solid.shoes = outfit.shoes;
}

}  // namespace tw
