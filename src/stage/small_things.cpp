// Ropes, lanterns, knives, diving helmets, oars and keys, simple but to be known at a thumb's size.
// Each stands on y = 0 like the plain shapes and fills its box. Drawn by eye, no source.
#include <Eigen/Geometry>
#include <algorithm>
#include <cmath>
#include <numbers>

#include "stage/mesh_parts.h"
#include "stage/solid_shapes.h"
#include "stage/thing_shapes.h"

namespace tw {
namespace {

constexpr double kTurn = 2 * std::numbers::pi;

/// A round bar along a line of points, without ends: rope strands and rings are closed by others.
void addBar(Mesh& mesh, const std::vector<Vec3>& line, double radius, int around) {
  const auto base = static_cast<std::uint32_t>(mesh.points.size());
  for (std::size_t i = 0; i < line.size(); ++i) {
    const Vec3 along =
        (line[std::min(i + 1, line.size() - 1)] - line[i == 0 ? 0 : i - 1]).normalized();
    const Vec3 like = std::abs(along.x()) < 0.8 ? Vec3::UnitX() : Vec3::UnitZ();
    const Vec3 a = (like - like.dot(along) * along).normalized(), b = along.cross(a);
    for (int k = 0; k < around; ++k) {
      const double turn = kTurn * k / around;
      const Vec3 out = std::cos(turn) * a + std::sin(turn) * b;
      mesh.points.push_back(line[i] + radius * out);
      mesh.normals.push_back(out);
    }
  }
  const auto n = static_cast<std::uint32_t>(around);
  for (std::uint32_t i = 0; i + 1 < line.size(); ++i)
    for (std::uint32_t k = 0; k < n; ++k) {
      const std::uint32_t p = base + i * n + k, q = base + i * n + (k + 1) % n;
      mesh.triangles.push_back({p, q, p + n});
      mesh.triangles.push_back({q, q + n, p + n});
    }
  mesh.part.resize(mesh.triangles.size(), 0);
}

Mesh ringMesh(double wide, double bar) {
  std::vector<Vec3> line;
  for (int i = 0; i <= 18; ++i) {
    const double a = kTurn * i / 18;
    line.emplace_back((wide / 2 - bar) * std::cos(a), wide / 2 + (wide / 2 - bar) * std::sin(a), 0);
  }
  Mesh mesh;
  addBar(mesh, line, bar, 7);
  return mesh;
}

}  // namespace

Mesh ropeMesh(double length, double thick, bool slack) {
  constexpr int kStepsATurn = 7, kStrands = 3;
  const double lay = 4.2 * thick;  // length of a full twist
  const int steps = std::clamp(static_cast<int>(kStepsATurn * length / lay), 8, 160);
  Mesh mesh;
  for (int strand = 0; strand < kStrands; ++strand) {
    std::vector<Vec3> line;
    for (int i = 0; i <= steps; ++i) {
      const double t = double(i) / steps,
                   twist = kTurn * (t * length / lay + double(strand) / kStrands);
      const double sway =
          slack ? 0.07 * length * std::sin(kTurn * (0.85 * t + 0.1)) * (1 - 0.4 * t) : 0;
      line.emplace_back(sway + 0.27 * thick * std::cos(twist), t * length,
                        0.5 * sway + 0.27 * thick * std::sin(twist));
    }
    addBar(mesh, line, 0.27 * thick, 6);
  }
  return mesh;
}

Mesh lanternMesh(const std::array<double, 3>& size) {
  const double w = size[0], h = size[1], d = size[2];
  Mesh mesh = cylinderMesh({0.96 * w, 0.07 * h, 0.96 * d}, 28);
  append(mesh, cylinderMesh({0.72 * w, 0.12 * h, 0.72 * d}, 28), {0, 0.07 * h, 0});
  append(mesh, ellipsoidMesh({0.66 * w, 0.46 * h, 0.66 * d}, 24), {0, 0.15 * h, 0});
  append(mesh, cylinderMesh({0.80 * w, 0.05 * h, 0.80 * d}, 28), {0, 0.57 * h, 0});
  append(mesh, coneMesh({0.92 * w, 0.20 * h, 0.92 * d}, 28), {0, 0.61 * h, 0});
  for (const double side : {-1.0, 1.0})
    append(mesh, cylinderMesh({0.07 * w, 0.45 * h, 0.07 * d}, 8), {side * 0.42 * w, 0.14 * h, 0});
  append(mesh, ringMesh(0.24 * h, 0.022 * h), {0, 0.76 * h, 0});
  return mesh;
}

Mesh knifeMesh(const std::array<double, 3>& size) {
  const double length = std::max({size[0], size[1], size[2]});
  const double wide = 0.15 * length, thick = 0.05 * length;
  Mesh mesh = boxMesh({0.62 * wide, 0.36 * length, 1.4 * thick});
  append(mesh, boxMesh({1.7 * wide, 0.035 * length, 2.2 * thick}), {0, 0.36 * length, 0});
  append(mesh, boxMesh({0.85 * wide, 0.36 * length, 0.6 * thick}), {0, 0.395 * length, 0});
  // The point: a wedge from the blade's breadth to nothing, its back straight.
  Mesh point = boxMesh({0.85 * wide, 0.245 * length, 0.6 * thick});
  for (Vec3& p : point.points)
    if (p.y() > 0.1 * length) p.x() = -0.42 * wide;
  append(mesh, point, {0, 0.755 * length, 0});
  return mesh;
}

Mesh helmetMesh(const std::array<double, 3>& size) {
  const double w = size[0], h = size[1], d = size[2];
  Mesh mesh = cylinderMesh({1.0 * w, 0.12 * h, 1.0 * d}, 32);
  append(mesh, cylinderMesh({0.78 * w, 0.10 * h, 0.78 * d}, 32), {0, 0.10 * h, 0});
  append(mesh, ellipsoidMesh({0.94 * w, 0.86 * h, 0.94 * d}, 32), {0, 0.14 * h, 0});
  for (const double turn : {0.0, 75.0, -75.0}) {
    const double big = turn == 0 ? 0.46 : 0.32, a = turn * kTurn / 360;
    const Place3 at{0.46 * w * std::sin(a), 0.60 * h, -0.46 * d * std::cos(a)};
    append(mesh, placed(cylinderMesh({big * h, 0.10 * h, big * h}, 24), at, turn, 90, true));
  }
  return mesh;
}

Mesh oarMesh(double length, double thick) {
  Mesh mesh = cylinderMesh({thick, 0.78 * length, thick}, 12);
  append(mesh, ellipsoidMesh({3.6 * thick, 0.30 * length, 0.6 * thick}, 20), {0, 0.70 * length, 0});
  return mesh;
}

Mesh keyMesh(const std::array<double, 3>& size) {
  const double h = std::max({size[0], size[1], size[2]});
  Mesh mesh = cylinderMesh({0.10 * h, 0.72 * h, 0.10 * h}, 10);
  append(mesh, ringMesh(0.36 * h, 0.05 * h), {0, 0.66 * h, 0});
  append(mesh, boxMesh({0.18 * h, 0.09 * h, 0.05 * h}), {0.11 * h, 0.03 * h, 0});
  append(mesh, boxMesh({0.14 * h, 0.07 * h, 0.05 * h}), {0.10 * h, 0.18 * h, 0});
  return mesh;
}

}  // namespace tw
