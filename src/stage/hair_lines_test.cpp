#include <doctest/doctest.h>

#include "stage/garment_lines.h"
#include "stage/picture.h"

using namespace tw;

namespace {

std::vector<GarmentLine> strandsOf(Hair cut, Hat hat = Hat::None) {
  Character mara{"mara", "MARA"};
  Body body = bodyOf(mara);
  body.look.hairCut = cut;
  body.look.hatKind = hat;
  return hairLines(body, posed(body, Pose{}, SetFigure{}));
}

}  // namespace

TEST_CASE("Every smooth head of hair has strands that look outward") {
  for (const Hair cut : {Hair::Short, Hair::Bun, Hair::Bob, Hair::Long, Hair::Tail}) {
    const auto strands = strandsOf(cut);
    CHECK(strands.size() > 10);
    for (const GarmentLine& strand : strands) {
      CHECK(strand.parts == 1u << static_cast<unsigned>(BodyPart::Hair));
      REQUIRE(strand.at.size() == strand.out.size());
      for (std::size_t i = 0; i < strand.at.size(); ++i)
        CHECK(strand.out[i].norm() == doctest::Approx(1));
    }
  }
}

TEST_CASE("Strands lie on the mass of hair") {
  Character mara{"mara", "MARA"};
  Body body = bodyOf(mara);
  body.look.hairCut = Hair::Long;
  const Skeleton skeleton = posed(body, Pose{}, SetFigure{});
  const Mesh mesh = bodyMesh(body, skeleton, 1);
  for (const GarmentLine& strand : hairLines(body, skeleton))
    for (const Vec3& at : strand.at) {
      double nearest = 1;
      for (const Vec3& p : mesh.points) nearest = std::min(nearest, (p - at).norm());
      CHECK(nearest < 0.03);  // a mesh of this fineness has a corner every 3 cm
    }
}

TEST_CASE("No strands where no smooth hair is seen") {
  CHECK(strandsOf(Hair::Bald).empty());
  CHECK(strandsOf(Hair::Curly).empty());
  CHECK(strandsOf(Hair::Short, Hat::Hood).empty());
}
