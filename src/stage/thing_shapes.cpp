#include "stage/thing_shapes.h"

#include <Eigen/Geometry>
#include <algorithm>
#include <cmath>
#include <numbers>

#include "stage/mesh_parts.h"

namespace tw {
namespace {

using Row = std::vector<Vec3>;

/// A surface through rows of equally many points; normals are the mean of the faces around,
/// turned to the side that `outward` says.
template <class Outward>
void appendSurface(Mesh& mesh, const std::vector<Row>& rows, bool closed, Outward outward) {
  const auto base = static_cast<std::uint32_t>(mesh.points.size());
  const std::size_t across = rows[0].size();
  for (std::size_t i = 0; i < rows.size(); ++i) {
    for (std::size_t k = 0; k < across; ++k) {
      const Vec3& at = rows[i][k];
      const Vec3& up = rows[std::min(i + 1, rows.size() - 1)][k];
      const Vec3& down = rows[i == 0 ? 0 : i - 1][k];
      const std::size_t next = closed ? (k + 1) % across : std::min(k + 1, across - 1);
      const std::size_t last = closed ? (k + across - 1) % across : (k == 0 ? 0 : k - 1);
      Vec3 normal = (up - down).cross(rows[i][next] - rows[i][last]);
      const Vec3 out = outward(at);
      normal = normal.norm() < 1e-12 ? out.normalized() : normal.normalized();
      mesh.points.push_back(at);
      mesh.normals.push_back(normal.dot(out) < 0 ? Vec3(-normal) : normal);
    }
  }
  const auto n = static_cast<std::uint32_t>(across);
  for (std::uint32_t i = 0; i + 1 < rows.size(); ++i) {
    for (std::uint32_t k = 0; k + (closed ? 0 : 1) < n; ++k) {
      const std::uint32_t a = base + i * n + k, b = base + i * n + (k + 1) % n;
      mesh.triangles.push_back({a, b, a + n});
      mesh.triangles.push_back({b, b + n, a + n});
    }
  }
  mesh.part.resize(mesh.triangles.size(), 0);
}

}  // namespace

Mesh bellMesh(const std::array<double, 3>& size) {
  // Height share and radius share down the outside of a cast bell; drawn, no source.
  constexpr std::array<std::array<double, 2>, 11> kProfile{{{1.00, 0.0},
                                                            {0.99, 0.20},
                                                            {0.95, 0.34},
                                                            {0.88, 0.43},
                                                            {0.72, 0.48},
                                                            {0.50, 0.53},
                                                            {0.32, 0.61},
                                                            {0.17, 0.75},
                                                            {0.07, 0.92},
                                                            {0.02, 1.00},
                                                            {0.00, 0.98}}};
  constexpr int kAround = 40;
  const double body = 0.9 * size[1];
  std::vector<Row> rows;
  for (const auto& [height, radius] : kProfile) {
    Row row;
    for (int k = 0; k < kAround; ++k) {
      const double a = 2 * std::numbers::pi * k / kAround;
      row.emplace_back(radius * size[0] / 2 * std::cos(a), height * body,
                       radius * size[2] / 2 * std::sin(a));
    }
    rows.push_back(std::move(row));
  }
  Mesh mesh;
  appendSurface(mesh, rows, true, [&](const Vec3& p) { return Vec3(p.x(), 0.3 * p.y(), p.z()); });
  windOutward(mesh);
  append(mesh, boxMesh({0.16 * size[0], 0.1 * size[1], 0.1 * size[2]}), {0, body, 0});
  append(mesh, ellipsoidMesh({0.16 * size[0], 0.14 * size[1], 0.16 * size[2]}, 16),
         {0, -0.06 * size[1], 0});
  return mesh;
}

Mesh boatMesh(const std::array<double, 3>& size) {
  constexpr int kStations = 24;
  const double wall = 0.05, floor = 0.12 * size[1];
  std::vector<Row> outside[2], inside[2], deck;
  for (int i = 0; i <= kStations; ++i) {
    const double u = 2.0 * i / kStations - 1;
    const double half = std::max(size[2] / 2 * std::pow(1 - u * u, 0.55), 0.02);
    const double sheer = size[1] * (0.78 + 0.22 * u * u);
    const double x = u * size[0] / 2;
    for (const int side : {0, 1}) {
      const double s = side == 0 ? -1 : 1;
      const double in = std::max(half - wall, 0.01);
      outside[side].push_back({{0.93 * x, 0, s * 0.72 * half},
                               {0.97 * x, 0.5 * sheer, s * 0.92 * half},
                               {x, sheer, s * half}});
      inside[side].push_back(
          {{x, sheer, s * half}, {0.99 * x, sheer, s * in}, {0.95 * x, floor, s * 0.75 * in}});
    }
    const double in = 0.75 * std::max(half - wall, 0.01);
    deck.push_back({{0.95 * x, floor, -in}, {0.95 * x, floor, in}});
  }
  Mesh mesh;
  for (const int side : {0, 1}) {
    const double s = side == 0 ? -1 : 1;
    appendSurface(mesh, outside[side], false, [&](const Vec3&) { return Vec3(0, -0.2, s); });
    appendSurface(mesh, inside[side], false, [&](const Vec3&) { return Vec3(0, 0.4, -s); });
  }
  appendSurface(mesh, deck, false, [](const Vec3&) { return Vec3(0, 1, 0); });
  windOutward(mesh);
  return mesh;
}

namespace {

/// One link: a round bar bent to an oval in the plane of y and x (or z when `turned`).
Mesh linkMesh(double length, double wide, double bar, bool turned) {
  constexpr int kAlong = 16, kRound = 7;
  const auto spot = [&](double u, double y, double off) {
    return turned ? Vec3(off, y, u) : Vec3(u, y, off);
  };
  std::vector<Row> rows;
  for (int i = 0; i <= kAlong; ++i) {
    const double a = 2 * std::numbers::pi * i / kAlong;
    Row row;
    for (int k = 0; k < kRound; ++k) {
      const double b = 2 * std::numbers::pi * k / kRound;
      const double out = bar * std::cos(b);
      row.push_back(spot((wide / 2 - bar + out) * std::cos(a),
                         length / 2 + (length / 2 - bar + out) * std::sin(a), bar * std::sin(b)));
    }
    rows.push_back(std::move(row));
  }
  Mesh mesh;
  appendSurface(mesh, rows, true, [&](const Vec3& p) {
    const double u = turned ? p.z() : p.x(), off = turned ? p.x() : p.z();
    const double x = u / (wide / 2 - bar), y = (p.y() - length / 2) / (length / 2 - bar);
    const double r = std::max(std::hypot(x, y), 1e-9);
    const double du = u - x / r * (wide / 2 - bar);
    const double dy = p.y() - length / 2 - y / r * (length / 2 - bar);
    return spot(du, dy, off);
  });
  windOutward(mesh);
  return mesh;
}

}  // namespace

Mesh chainMesh(double length, double thick) {
  const double link = std::max(0.2, 2.8 * thick), bar = 0.11 * link;
  const double step = link - 2.4 * bar;
  const int count = std::clamp(static_cast<int>(length / step), 2, 40);
  Mesh chain;
  for (int i = 0; i < count; ++i) {
    append(chain, linkMesh(link, 0.62 * link, bar, i % 2 == 1),
           Vec3(0, (length - link) * i / (count - 1), 0));
  }
  return chain;
}

}  // namespace tw
