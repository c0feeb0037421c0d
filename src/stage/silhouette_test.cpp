#include "stage/silhouette.h"

#include <doctest/doctest.h>

#include <cmath>

#include "stage/camera.h"
#include "stage/solid_shapes.h"

using namespace tw;

TEST_CASE("a ball has one closed contour, on the analytic conic") {
  // Source: closed form. Points where the tangent cone from the eye touches a sphere are seen at
  // tan = r / sqrt(d² − r²) from the axis.
  const double r = 0.5, d = 3;
  const Mesh ball = placed(ellipsoidMesh({1, 1, 1}, 64), {0, 0, d}, 0, 0, true);
  const auto chains = smoothContours(ball, Vec3::Zero());
  REQUIRE(chains.size() == 1);
  CHECK(chains[0].closed);
  const double expected = r / std::sqrt(d * d - r * r);
  for (const ContourPoint& p : chains[0].points)
    CHECK(std::hypot(p.at.x(), p.at.y()) / p.at.z() == doctest::Approx(expected).epsilon(0.005));
}

TEST_CASE("a ball off the axis is seen as the ellipse of its tangent cone") {
  // Source: Hartley & Zisserman, result 8.6: the dual conic of the outline is P·Q*·Pᵀ.
  const Vec3 centre(0.9, -0.4, 3);
  const double r = 0.5;
  const Mesh ball =
      placed(ellipsoidMesh({1, 1, 1}, 64), {centre.x(), centre.y(), centre.z()}, 0, 0, true);
  const auto chains = smoothContours(ball, Vec3::Zero());
  REQUIRE(chains.size() == 1);
  // A direction x touches the sphere when (x·c)² = |x|²(|c|² − r²).
  for (const ContourPoint& p : chains[0].points) {
    const double seen = p.at.dot(centre) / p.at.norm();
    const double expected = std::sqrt(centre.squaredNorm() - r * r);
    const double seenAngle = std::acos(seen / centre.norm());
    const double expectedAngle = std::acos(expected / centre.norm());
    CHECK(seenAngle == doctest::Approx(expectedAngle).epsilon(0.005));
  }
}

TEST_CASE("a box seen from a corner shows nine edges, three of them inner") {
  const Mesh box = boxMesh({1, 1, 1});
  const auto chains = creases(box, Vec3(-3, 4, -5));
  int inner = 0, outer = 0;
  for (const auto& chain : chains) (chain.kind == LineKind::Crease ? inner : outer) += 1;
  CHECK(inner == 3);
  CHECK(outer == 6);
}

TEST_CASE("a cylinder shows two straight sides and its rims as unbroken rings") {
  const Mesh cylinder = cylinderMesh({1, 2, 1});
  const Vec3 eye(0, 1, -6);
  CHECK(smoothContours(cylinder, eye).size() == 2);
  const auto rims = creases(cylinder, eye);
  REQUIRE(rims.size() >= 2);
  for (const auto& rim : rims) CHECK(rim.points.size() > 15);
}

TEST_CASE("the inside of a bowl has no contour that could be seen") {
  // A ball turned inside out is all hollow: its own near wall hides every contour.
  Mesh hollow = placed(ellipsoidMesh({1, 1, 1}, 48), {0, 0, 3}, 0, 0, true);
  for (Vec3& n : hollow.normals) n = -n;
  CHECK(smoothContours(hollow, Vec3::Zero()).empty());
}
