#include "stage/mark_lines.h"

#include <doctest/doctest.h>

#include "stage/shipped_presets.h"
#include "stage/staging.h"

namespace tw {
namespace {

Body marked(const char* kind, const char* place, double side) {
  Body body = bodyOf(Character{});
  body.look.clothed = true;
  body.look.marks = {{kind, place, side}};
  return body;
}

Vec3 middleOf(const std::vector<GarmentLine>& lines) {
  Vec3 sum = Vec3::Zero();
  double count = 0;
  for (const GarmentLine& line : lines)
    for (const Vec3& at : line.at) sum += at, ++count;
  return sum / std::max(1.0, count);
}

const std::vector<std::string>& kinds() {
  static const std::vector<std::string> all{"scar",    "cut",     "bruise",    "stitches",
                                            "plaster", "bandage", "eye patch", "tattoo",
                                            "burn",    "tear",    "dirt",      "blood"};
  return all;
}

}  // namespace

TEST_CASE("a mark stays on the figure's own side whichever way the pose is seen") {
  for (const bool mirrored : {false, true})
    for (const double heading : {0.0, 180.0})
      for (const double side : {-1.0, 1.0})
        for (const char* place : {"cheek", "brow", "jaw", "temple"}) {
          const Body body = marked("scar", place, side);
          SetFigure set;
          set.poseMirrored = mirrored;
          set.headingDeg = heading;
          const Skeleton s = posed(body, Pose{}, set);
          const Vec3 head = s[Joint::Head];
          const Vec3 toLeft = s[Joint::LeftShoulder] - s[Joint::RightShoulder];
          const auto lines = markLines(body, s);
          REQUIRE_FALSE(lines.empty());
          CAPTURE(place);
          CHECK((middleOf(lines) - head).dot(toLeft) * -side > 0);
        }
}

TEST_CASE("a bandage is on the limb of its side in a mirrored pose too") {
  for (const bool mirrored : {false, true}) {
    const Body body = marked("bandage", "forearm", 1);
    SetFigure set;
    set.poseMirrored = mirrored;
    const Skeleton s = posed(body, Pose{}, set);
    const Vec3 at = middleOf(markLines(body, s));
    const Vec3 right = (s[Joint::RightElbow] + s[Joint::RightWrist]) / 2;
    CHECK((at - right).norm() < 0.08);
  }
}

TEST_CASE("cloth hides a cut but not a bandage") {
  Body cut = marked("cut", "forearm", -1), bandage = marked("bandage", "forearm", -1);
  const Skeleton s = posed(cut, Pose{}, {});
  CHECK(markLines(cut, s).empty());
  CHECK_FALSE(markLines(bandage, s).empty());
  cut.look.sleeves = Cut::Short;
  CHECK_FALSE(markLines(cut, s).empty());
}

TEST_CASE("every kind of mark has lines on every place of a bare figure") {
  for (const std::string& kind : kinds())
    for (const char* place :
         {"cheek", "temple", "brow",  "eye",  "jaw",      "forehead",  "nose",
          "mouth", "chin",   "face",  "neck", "shoulder", "upper arm", "forearm",
          "hand",  "chest",  "belly", "back", "thigh",    "knee",      "shin"}) {
      Body body = marked(kind.c_str(), place, -1);
      body.look.clothed = false;
      const Skeleton s = posed(body, Pose{}, {});
      CAPTURE(kind);
      CAPTURE(place);
      CHECK_FALSE(markLines(body, s).empty());
    }
}

}  // namespace tw
