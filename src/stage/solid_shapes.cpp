#include "stage/solid_shapes.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "stage/building_shapes.h"

namespace tw {

namespace {

constexpr double kTurn = 2 * std::numbers::pi;

std::uint32_t addPoint(Mesh& mesh, const Vec3& point, const Vec3& normal) {
  mesh.points.push_back(point);
  mesh.normals.push_back(normal.normalized());
  return static_cast<std::uint32_t>(mesh.points.size() - 1);
}

void addTriangle(Mesh& mesh, std::uint32_t a, std::uint32_t b, std::uint32_t c) {
  mesh.triangles.push_back({a, b, c});
  mesh.part.push_back(0);
}

/// A flat disc of its own points, normal straight up or down.
void addDisc(Mesh& mesh, double radiusX, double radiusZ, double y, double up, int around) {
  const auto middle = addPoint(mesh, Vec3(0, y, 0), Vec3(0, up, 0));
  const auto first = middle + 1;
  for (int i = 0; i < around; ++i) {
    const double a = kTurn * i / around;
    addPoint(mesh, Vec3(radiusX * std::cos(a), y, radiusZ * std::sin(a)), Vec3(0, up, 0));
  }
  const auto n = static_cast<std::uint32_t>(around);
  for (std::uint32_t i = 0; i < n; ++i) addTriangle(mesh, middle, first + i, first + (i + 1) % n);
}

/// The side of a cylinder or cone between two rings. Points are shared around.
void addSide(Mesh& mesh, const std::array<double, 3>& size, double topScale, int around) {
  const double rx = size[0] / 2, rz = size[2] / 2, h = size[1];
  const auto first = static_cast<std::uint32_t>(mesh.points.size());
  for (int i = 0; i < around; ++i) {
    const double c = std::cos(kTurn * i / around), s = std::sin(kTurn * i / around);
    // Gradient of (x/rx)² + (z/rz)² − (1 − y(1 − topScale)/h)²: also right for elliptic rings.
    const Vec3 normal(c / rx, (1 - topScale) / h, s / rz);
    addPoint(mesh, Vec3(rx * c, 0, rz * s), normal);
    addPoint(mesh, Vec3(rx * topScale * c, h, rz * topScale * s), normal);
  }
  const auto n = static_cast<std::uint32_t>(around);
  for (std::uint32_t i = 0; i < n; ++i) {
    const std::uint32_t a = first + 2 * i, b = first + 2 * ((i + 1) % n);
    addTriangle(mesh, a, b, a + 1);
    addTriangle(mesh, b, b + 1, a + 1);
  }
}

}  // namespace

Mesh boxMesh(const std::array<double, 3>& size) {
  Mesh mesh;
  const Vec3 half(size[0] / 2, size[1] / 2, size[2] / 2);
  for (int axis = 0; axis < 3; ++axis)
    for (const double sign : {-1.0, 1.0}) {
      const int u = (axis + 1) % 3, v = (axis + 2) % 3;
      Vec3 normal = Vec3::Zero();
      normal[axis] = sign;
      std::array<std::uint32_t, 4> corner{};
      for (int i = 0; i < 4; ++i) {
        Vec3 p = half[axis] * normal;
        p[u] = (i == 1 || i == 2 ? 1 : -1) * half[u];
        p[v] = (i >= 2 ? 1 : -1) * half[v];
        corner[static_cast<std::size_t>(i)] = addPoint(mesh, p + Vec3(0, half.y(), 0), normal);
      }
      addTriangle(mesh, corner[0], corner[1], corner[2]);
      addTriangle(mesh, corner[0], corner[2], corner[3]);
    }
  windOutward(mesh);
  return mesh;
}

Mesh cylinderMesh(const std::array<double, 3>& size, int around) {
  Mesh mesh;
  addSide(mesh, size, 1, around);
  addDisc(mesh, size[0] / 2, size[2] / 2, 0, -1, around);
  addDisc(mesh, size[0] / 2, size[2] / 2, size[1], 1, around);
  windOutward(mesh);
  return mesh;
}

Mesh coneMesh(const std::array<double, 3>& size, int around) {
  // A truly pointed tip has no normal; a tip of 1/1000 keeps the shared sides' normals right.
  constexpr double kTip = 1e-3;
  Mesh mesh;
  addSide(mesh, size, kTip, around);
  addDisc(mesh, size[0] / 2, size[2] / 2, 0, -1, around);
  addDisc(mesh, kTip * size[0] / 2, kTip * size[2] / 2, size[1], 1, around);
  windOutward(mesh);
  return mesh;
}

Mesh ellipsoidMesh(const std::array<double, 3>& size, int around) {
  Mesh mesh;
  const double rx = size[0] / 2, ry = size[1] / 2, rz = size[2] / 2;
  const int rings = std::max(4, around / 2);
  const auto put = [&](double x, double y, double z) {
    addPoint(mesh, Vec3(rx * x, ry * (1 + y), rz * z), Vec3(x / rx, y / ry, z / rz));
  };
  put(0, -1, 0);
  for (int r = 1; r < rings; ++r) {
    const double latitude = std::numbers::pi * (static_cast<double>(r) / rings - 0.5);
    for (int i = 0; i < around; ++i) {
      const double a = kTurn * i / around;
      put(std::cos(latitude) * std::cos(a), std::sin(latitude), std::cos(latitude) * std::sin(a));
    }
  }
  put(0, 1, 0);
  const auto n = static_cast<std::uint32_t>(around);
  const auto top = static_cast<std::uint32_t>(mesh.points.size() - 1);
  const std::uint32_t lastRing = top - n;
  for (std::uint32_t i = 0; i < n; ++i) {
    addTriangle(mesh, 0, 1 + i, 1 + (i + 1) % n);
    addTriangle(mesh, top, lastRing + i, lastRing + (i + 1) % n);
  }
  for (std::uint32_t ring = 1; ring < lastRing; ring += n)
    for (std::uint32_t i = 0; i < n; ++i) {
      const std::uint32_t a = ring + i, b = ring + (i + 1) % n;
      addTriangle(mesh, a, b, a + n);
      addTriangle(mesh, b, b + n, a + n);
    }
  windOutward(mesh);
  return mesh;
}

namespace {

using Size = std::array<double, 3>;

struct NamedShape {
  std::string_view name;
  Mesh (*build)(const Size&);
};

const std::array<NamedShape, 16> kShapes{
    {{"box", boxMesh},
     {"cylinder", [](const Size& s) { return cylinderMesh(s); }},
     {"cone", [](const Size& s) { return coneMesh(s); }},
     {"ellipsoid", [](const Size& s) { return ellipsoidMesh(s); }},
     {"pyramid", pyramidMesh},
     {"ground", groundMesh},
     {"wall",
      [](const Size& s) {
        return slabMesh(Outline{{-s[0] / 2, 0}, {s[0] / 2, 0}, {s[0] / 2, s[1]}, {-s[0] / 2, s[1]}},
                        s[2]);
      }},
     {"arch", archMesh},
     {"doorway", doorwayMesh},
     {"door", doorMesh},
     {"window", windowMesh},
     {"stairs", [](const Size& s) { return stairsMesh(s); }},
     {"ladder", ladderMesh},
     {"house", houseMesh},
     {"tower", [](const Size& s) { return towerMesh(s, false); }},
     {"broken-tower", [](const Size& s) { return towerMesh(s, true); }}}};

}  // namespace

std::vector<std::string> shapeNames() {
  std::vector<std::string> names;
  for (const NamedShape& shape : kShapes) names.emplace_back(shape.name);
  return names;
}

Mesh shapeMesh(const std::string& shape, const std::array<double, 3>& size) {
  for (const NamedShape& known : kShapes)
    if (known.name == shape) return known.build(size);
  return boxMesh(size);
}

Mesh placed(Mesh mesh, const Place3& at, double headingDeg, double pitchDeg, bool aboutCentre) {
  const double h = headingDeg * kTurn / 360, p = pitchDeg * kTurn / 360;
  Eigen::Matrix3d tip, turn;
  tip << 1, 0, 0, 0, std::cos(p), std::sin(p), 0, -std::sin(p), std::cos(p);
  turn << std::cos(h), 0, -std::sin(h), 0, 1, 0, std::sin(h), 0, std::cos(h);
  const Eigen::Matrix3d r = turn * tip;
  Vec3 pivot = Vec3::Zero();
  if (aboutCentre)
    for (const Vec3& point : mesh.points) pivot.y() = std::max(pivot.y(), point.y() / 2);
  for (Vec3& point : mesh.points) point = r * (point - pivot) + Vec3(at.x, at.y, at.z);
  for (Vec3& normal : mesh.normals) normal = r * normal;
  return mesh;
}

}  // namespace tw
