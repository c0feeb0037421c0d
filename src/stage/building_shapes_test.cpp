#include "stage/building_shapes.h"

#include <doctest/doctest.h>

#include <Eigen/Geometry>
#include <algorithm>
#include <cmath>
#include <map>
#include <numbers>
#include <set>

#include "stage/mesh_area_test.h"
#include "stage/solid_shapes.h"
#include "stage/thing_shapes.h"

namespace tw {
namespace {

using Size = std::array<double, 3>;

/// The mesh with points at one place made one, as a surface: V − E + F, and whether each edge has
/// exactly two triangles that pass it in opposite directions.
struct Topology {
  int euler = 0;
  bool closed = true;
};

Topology topologyOf(const Mesh& mesh) {
  std::map<std::array<long, 3>, std::uint32_t> places;
  std::vector<std::uint32_t> at;
  for (const Vec3& p : mesh.points) {
    const std::array<long, 3> key{std::lround(p.x() * 1e7), std::lround(p.y() * 1e7),
                                  std::lround(p.z() * 1e7)};
    at.push_back(places.emplace(key, static_cast<std::uint32_t>(places.size())).first->second);
  }
  std::map<std::pair<std::uint32_t, std::uint32_t>, int> directed;
  std::set<std::pair<std::uint32_t, std::uint32_t>> edges;
  std::set<std::uint32_t> used;
  int faces = 0;
  for (const auto& t : mesh.triangles) {
    const std::array<std::uint32_t, 3> w{at[t[0]], at[t[1]], at[t[2]]};
    if (w[0] == w[1] || w[1] == w[2] || w[2] == w[0]) continue;  // a pole's sliver
    ++faces;
    for (std::size_t i = 0; i < 3; ++i) {
      const std::uint32_t a = w[i], b = w[(i + 1) % 3];
      ++directed[{a, b}];
      edges.insert(std::minmax(a, b));
      used.insert(a);
    }
  }
  Topology out;
  out.euler = static_cast<int>(used.size()) - static_cast<int>(edges.size()) + faces;
  for (const auto& [edge, count] : directed) {
    const auto back = directed.find({edge.second, edge.first});
    out.closed = out.closed && count == 1 && back != directed.end() && back->second == 1;
  }
  return out;
}

void mustBeSphereLike(const Mesh& mesh) {
  const Topology t = topologyOf(mesh);
  CHECK(t.closed);
  CHECK(t.euler == 2);
}

}  // namespace

// Sources of the formulas: elementary stereometry. Euler characteristic of a closed surface with g
// handles: 2 − 2g (Euler–Poincaré), so a wall with a window through it has 0.

TEST_CASE("plain bodies are closed like a ball and wound outward with their textbook measures") {
  const Size size{2, 3, 4};
  const double pi = std::numbers::pi;
  for (const char* shape :
       {"box", "cylinder", "cone", "ellipsoid", "pyramid", "wall", "arch", "stairs"}) {
    CAPTURE(shape);
    mustBeSphereLike(shapeMesh(shape, size));
  }
  CHECK(signedVolume(boxMesh(size)) == doctest::Approx(24));
  CHECK(surface(boxMesh(size)) == doctest::Approx(2 * (6 + 8 + 12)));
  CHECK(signedVolume(cylinderMesh(size, 400)) == doctest::Approx(6 * pi).epsilon(1e-3));
  CHECK(signedVolume(coneMesh(size, 400)) == doctest::Approx(2 * pi).epsilon(2e-3));
  CHECK(signedVolume(ellipsoidMesh(size, 200)) == doctest::Approx(4 * pi).epsilon(2e-3));
  CHECK(signedVolume(pyramidMesh(size)) == doctest::Approx(8));
  const Size round{2, 3, 2};
  CHECK(surface(cylinderMesh(round, 400)) == doctest::Approx(2 * pi * 3 + 2 * pi).epsilon(1e-3));
  CHECK(surface(coneMesh(round, 400)) ==
        doctest::Approx(pi * std::sqrt(1 + 9.0) + pi).epsilon(2e-3));
  CHECK(surface(ellipsoidMesh({2, 2, 2}, 200)) == doctest::Approx(4 * pi).epsilon(2e-3));
}

TEST_CASE("a wall lacks just what its opening takes away") {
  const Size size{5, 3, 0.4};
  for (const bool arched : {false, true})
    for (const double sill : {0.0, 0.9})
      for (const double across : {-1.0, 0.0, 1.2}) {
        const Opening opening{1.2, sill, 1.6, arched, across};
        const Mesh wall = wallMesh(size, opening);
        CAPTURE(sill);
        CAPTURE(arched);
        CHECK(signedVolume(wall) == doctest::Approx((15 - areaOf(opening)) * 0.4));
        const Topology t = topologyOf(wall);
        CHECK(t.closed);
        CHECK(t.euler == (sill > 0 ? 0 : 2));  // a window is a handle, a doorway none
      }
  CHECK(areaOf({1.2, 0, 2, false}) == doctest::Approx(2.4));
  // A round head: rectangle below, half circle (inscribed facets, a little less) above.
  CHECK(areaOf({2, 0, 3, true}) == doctest::Approx(4 + std::numbers::pi / 2).epsilon(5e-3));
}

TEST_CASE("an opening larger than its wall is made to fit") {
  const Topology t = topologyOf(wallMesh({1, 1, 0.2}, {9, 0.5, 9, true, 7}));
  CHECK(t.closed);
  CHECK(t.euler == 0);
}

TEST_CASE("stairs have the volume of their steps and rise away from the camera") {
  // n steps of rise r and tread t: r·t·n(n + 1)/2 by the sum of the first n numbers.
  const Mesh stairs = stairsMesh({1.5, 2, 4}, 10);
  CHECK(signedVolume(stairs) == doctest::Approx(1.5 * 0.2 * 0.4 * 55));
  double high = 0, zOfHigh = -10, low = 1e9;
  for (const Vec3& p : stairs.points) {
    if (p.y() >= high) high = p.y(), zOfHigh = std::max(zOfHigh, p.z());
    low = std::min(low, p.y());
  }
  CHECK(high == doctest::Approx(2));
  CHECK(low == doctest::Approx(0));
  CHECK(zOfHigh == doctest::Approx(2));
  // Risers of some 18 cm: 2.6 m has 14 of 18.6 cm. Common practice, no source.
  CHECK(signedVolume(stairsMesh({1, 2.6, 2.8})) == doctest::Approx(2.6 / 14 * 0.2 * 14 * 15 / 2));
}

TEST_CASE("the ground is a sheet that shows its upper side") {
  const Mesh ground = groundMesh({3, 0, 5});
  CHECK(surface(ground) == doctest::Approx(15));
  CHECK(topologyOf(ground).euler == 1);
  for (const Vec3& n : ground.normals) CHECK(n == Vec3::UnitY());
}

TEST_CASE("every named shape stands on the ground within its width and is wound as its normals") {
  for (const std::string& name : shapeNames()) {
    CAPTURE(name);
    const Size size{1.2, 2.4, 1.2};
    const Mesh mesh = shapeMesh(name, size);
    REQUIRE(!mesh.triangles.empty());
    CHECK(mesh.part.size() == mesh.triangles.size());
    CHECK(mesh.normals.size() == mesh.points.size());
    double low = 1e9, high = -1e9, wide = 0;
    for (const Vec3& p : mesh.points) {
      low = std::min(low, p.y()), high = std::max(high, p.y());
      wide = std::max(wide, std::abs(p.x()));
    }
    CHECK(low == doctest::Approx(0).epsilon(1e-9));
    CHECK(high <= 2.4 * 1.15);
    CHECK(wide <= 0.6 * 1.2);
    Mesh again = mesh;
    windOutward(again);
    CHECK(again.triangles == mesh.triangles);
    if (name != "ground") CHECK(signedVolume(mesh) > 0);
  }
}

TEST_CASE("bells and chains and boats are wound as their normals too") {
  for (const Mesh& mesh :
       {bellMesh({1.6, 1.7, 1.6}), chainMesh(2, 0.08), boatMesh({4, 0.9, 1.5})}) {
    Mesh again = mesh;
    windOutward(again);
    CHECK(again.triangles == mesh.triangles);
  }
}

TEST_CASE("a broken tower ends lower than a whole one and never the same all round") {
  const Mesh whole = towerMesh({4, 16, 4}, false), broken = towerMesh({4, 16, 4}, true);
  const auto highest = [](const Mesh& mesh, double fromX, double toX) {
    double high = 0;
    for (const Vec3& p : mesh.points)
      if (p.x() >= fromX && p.x() <= toX) high = std::max(high, p.y());
    return high;
  };
  CHECK(highest(whole, -9, 9) == doctest::Approx(16));
  CHECK(highest(broken, -9, 9) <= 16.01);
  CHECK(highest(broken, -9, -1.5) > highest(broken, 0.3, 0.7) + 0.5);
}

}  // namespace tw
