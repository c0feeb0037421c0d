#include "stage/solid_shapes.h"

#include <doctest/doctest.h>

#include <Eigen/Geometry>
#include <cmath>
#include <numbers>

using namespace tw;

namespace {

/// Volume by the divergence theorem, each triangle turned to the side its normals name.
double volume(const Mesh& mesh) {
  double sum = 0;
  for (const auto& t : mesh.triangles) {
    const Vec3 &a = mesh.points[t[0]], &b = mesh.points[t[1]], &c = mesh.points[t[2]];
    const Vec3 outward = mesh.normals[t[0]] + mesh.normals[t[1]] + mesh.normals[t[2]];
    const double six = a.dot(b.cross(c));
    sum += (b - a).cross(c - a).dot(outward) >= 0 ? six : -six;
  }
  return sum / 6;
}

}  // namespace

TEST_CASE("the shapes have their textbook volumes, so they are closed and point outward") {
  // Source: elementary formulas; the round ones are inscribed polyhedra, a little smaller.
  const std::array<double, 3> size{2, 3, 4};
  const double pi = std::numbers::pi;
  CHECK(volume(boxMesh(size)) == doctest::Approx(24));
  CHECK(volume(cylinderMesh(size, 200)) == doctest::Approx(pi * 1 * 2 * 3).epsilon(1e-3));
  CHECK(volume(coneMesh(size, 200)) == doctest::Approx(pi * 1 * 2 * 3 / 3).epsilon(2e-3));
  CHECK(volume(ellipsoidMesh(size, 120)) ==
        doctest::Approx(4.0 / 3 * pi * 1 * 1.5 * 2).epsilon(3e-3));
}

TEST_CASE("a placed thing stands with its base's middle on its place") {
  const Mesh mesh = placed(boxMesh({1, 2, 3}), {5, 0.5, 7}, 90);
  Vec3 low = mesh.points[0], high = low;
  for (const Vec3& p : mesh.points) {
    low = low.cwiseMin(p);
    high = high.cwiseMax(p);
  }
  CHECK((low - Vec3(3.5, 0.5, 6.5)).norm() < 1e-12);
  CHECK((high - Vec3(6.5, 2.5, 7.5)).norm() < 1e-12);
}

TEST_CASE("heading turns a thing's front from the camera toward the right") {
  Mesh mark;
  mark.points = {Vec3(0, 0, -1)};
  mark.normals = {Vec3(0, 0, -1)};
  const Mesh turned = placed(mark, {}, 90);
  CHECK((turned.points[0] - Vec3(1, 0, 0)).norm() < 1e-12);
}

TEST_CASE("a held thing turns about its middle") {
  const Mesh mesh = placed(boxMesh({1, 2, 1}), {0, 1, 0}, 0, 180, true);
  for (const Vec3& p : mesh.points) CHECK(std::abs(p.y() - 1) == doctest::Approx(1));
}
