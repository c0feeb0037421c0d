#include <doctest/doctest.h>

#include "stage/picture.h"

using namespace tw;

TEST_CASE("head marks lie where the head is: eyes under the crown, before the skull") {
  Character character;
  const Body body = bodyOf(character);
  const Skeleton skeleton = posed(body, Pose{}, SetFigure{});
  const HeadMarks marks = headMarks(body, skeleton);
  const Vec3 eyes = marks.at(0, 0.5, 0.4);
  // Source: Drillis & Contini 1966, eye height 0.936 of stature, within the pose's tolerance.
  const Vec3 up = marks.axes.col(1);
  const double share = (eyes - skeleton[Joint::Chin]).dot(up) / up.squaredNorm();
  CHECK(share == doctest::Approx((0.936 - 0.870) / 0.130).epsilon(0.05));
  CHECK((eyes - skeleton[Joint::Head]).dot(skeleton[Joint::Nose] - skeleton[Joint::Head]) > 0);
  // The figure faces the camera and its left hand is at +x: the head's right is not.
  CHECK(marks.axes.col(2).z() < 0);
}
