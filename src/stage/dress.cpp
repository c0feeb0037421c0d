#include <iterator>

#include "stage/garment_lines.h"
#include "stage/mark_lines.h"
#include "stage/picture.h"

namespace tw {

PartValues valuesOf(const Look& look) {
  using enum BodyPart;
  PartValues values{};
  const auto set = [&](double value, std::initializer_list<BodyPart> parts) {
    for (const BodyPart part : parts) values[static_cast<std::size_t>(part)] = value;
  };
  set(look.hair, {Hair});
  set(look.hat, {Hat});
  if (!look.clothed) return values;
  set(look.top, {Torso});
  set(look.legs, {Hips});
  if (look.sleeves != Cut::Bare) set(look.top, {LeftArm, RightArm});
  if (look.sleeves == Cut::Long) set(look.top, {LeftForearm, RightForearm});
  if (look.legCut != Cut::Bare) set(look.legs, {LeftLeg, RightLeg});
  if (look.legCut == Cut::Long) set(look.legs, {LeftShank, RightShank});
  set(look.skirt, {Skirt});
  set(look.shoes, {LeftFoot, RightFoot});
  set(look.hands, {LeftHand, RightHand});
  set(look.scarf, {Scarf});
  return values;
}

void dress(Solid& solid, const Body& body, const Skeleton& skeleton, bool withLines) {
  solid.head = headMarks(body, skeleton);
  solid.look = body.look;
  if (!withLines) return;
  solid.garmentLines = garmentLines(body, skeleton);
  for (std::vector<GarmentLine> more : {markLines(body, skeleton), hairLines(body, skeleton)})
    std::move(more.begin(), more.end(), std::back_inserter(solid.garmentLines));
}

}  // namespace tw
