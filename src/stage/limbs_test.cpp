#include "stage/limbs.h"

#include <doctest/doctest.h>

#include <set>
#include <string>

namespace tw {

TEST_CASE("mirroring a limb twice gives it back and head and trunk have no other side") {
  for (std::size_t i = 0; i < kLimbs; ++i) {
    const auto limb = static_cast<Limb>(i);
    CHECK(mirrored(mirrored(limb)) == limb);
  }
  CHECK(mirrored(Limb::Head) == Limb::Head);
  CHECK(mirrored(Limb::Trunk) == Limb::Trunk);
  CHECK(mirrored(Limb::LeftThigh) == Limb::RightThigh);
}

TEST_CASE("each limb has a name of its own that tells its side") {
  std::set<std::string> names;
  for (std::size_t i = 0; i < kLimbs; ++i) names.insert(std::string(nameOf(static_cast<Limb>(i))));
  CHECK(names.size() == kLimbs);
  CHECK(nameOf(Limb::LeftUpperArm) == "left upper arm");
}

TEST_CASE("hair and hat are seen with the head and a skirt with the trunk") {
  CHECK(limbOf(BodyPart::Hair) == Limb::Head);
  CHECK(limbOf(BodyPart::Hat) == Limb::Head);
  CHECK(limbOf(BodyPart::Skirt) == Limb::Trunk);
  CHECK(limbOf(BodyPart::RightShank) == Limb::RightShank);
}

}  // namespace tw
