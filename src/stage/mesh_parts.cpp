#include "stage/mesh_parts.h"

#include <Eigen/Geometry>
#include <cmath>

#include "geometry/triangulate.h"

namespace tw {

namespace {

constexpr double kSmoothCosine = 0.82;  // a rim that turns less than 35° is round

Vec3 rimNormal(const Outline& rim, std::size_t edge) {
  const Vector along = (rim[(edge + 1) % rim.size()] - rim[edge]).unit();
  return {along.y, -along.x, 0};
}

/// At one end of an edge of the rim: shared with the edge beyond it when the rim is round there.
Vec3 normalAtEnd(const Outline& rim, std::size_t edge, bool last) {
  const std::size_t n = rim.size();
  const Vec3 own = rimNormal(rim, edge);
  const Vec3 next = rimNormal(rim, last ? (edge + 1) % n : (edge + n - 1) % n);
  return own.dot(next) < kSmoothCosine ? own : Vec3(own + next).normalized();
}

void addRim(Mesh& mesh, const Outline& rim, double half) {
  for (std::size_t i = 0; i < rim.size(); ++i) {
    const Point a = rim[i], b = rim[(i + 1) % rim.size()];
    const auto base = static_cast<std::uint32_t>(mesh.points.size());
    for (const double z : {-half, half}) {
      mesh.points.emplace_back(a.x, a.y, z);
      mesh.points.emplace_back(b.x, b.y, z);
      mesh.normals.push_back(normalAtEnd(rim, i, false));
      mesh.normals.push_back(normalAtEnd(rim, i, true));
    }
    mesh.triangles.push_back({base, base + 1, base + 2});
    mesh.triangles.push_back({base + 1, base + 3, base + 2});
  }
}

}  // namespace

void append(Mesh& to, const Mesh& from, const Vec3& by) {
  const auto base = static_cast<std::uint32_t>(to.points.size());
  for (const Vec3& p : from.points) to.points.push_back(p + by);
  to.normals.insert(to.normals.end(), from.normals.begin(), from.normals.end());
  for (const auto& t : from.triangles)
    to.triangles.push_back({t[0] + base, t[1] + base, t[2] + base});
  to.part.insert(to.part.end(), from.part.begin(), from.part.end());
}

void windOutward(Mesh& mesh) {
  for (auto& t : mesh.triangles) {
    const Vec3 face =
        (mesh.points[t[1]] - mesh.points[t[0]]).cross(mesh.points[t[2]] - mesh.points[t[0]]);
    if (face.dot(mesh.normals[t[0]] + mesh.normals[t[1]] + mesh.normals[t[2]]) < 0)
      std::swap(t[1], t[2]);
  }
}

void addFace(Mesh& mesh, const std::vector<Vec3>& corners, const Vec3& normal) {
  // Seen along the axis that the normal follows most: the polygon keeps its form best there.
  Eigen::Index drop = 0;
  normal.cwiseAbs().maxCoeff(&drop);
  const auto base = static_cast<std::uint32_t>(mesh.points.size());
  Outline flat;
  for (const Vec3& p : corners) {
    flat.push_back({p[(drop + 1) % 3], p[(drop + 2) % 3]});
    mesh.points.push_back(p);
    mesh.normals.push_back(normal);
  }
  for (const auto& t : triangulated(flat))
    mesh.triangles.push_back({base + static_cast<std::uint32_t>(t[0]),
                              base + static_cast<std::uint32_t>(t[1]),
                              base + static_cast<std::uint32_t>(t[2])});
  mesh.part.resize(mesh.triangles.size(), 0);
}

Mesh slabMesh(const std::vector<Outline>& faces, const std::vector<Outline>& rims, double depth) {
  Mesh mesh;
  for (const Outline& face : faces)
    for (const double side : {-1.0, 1.0}) {
      std::vector<Vec3> corners;
      for (const Point& p : face) corners.emplace_back(p.x, p.y, side * depth / 2);
      addFace(mesh, corners, Vec3(0, 0, side));
    }
  for (const Outline& rim : rims) addRim(mesh, rim, depth / 2);
  mesh.part.assign(mesh.triangles.size(), 0);
  windOutward(mesh);
  return mesh;
}

Mesh slabMesh(const Outline& outline, double depth) {
  return slabMesh(std::vector<Outline>{outline}, {outline}, depth);
}

double signedVolume(const Mesh& mesh) {
  double sum = 0;
  for (const auto& t : mesh.triangles)
    sum += mesh.points[t[0]].dot(mesh.points[t[1]].cross(mesh.points[t[2]]));
  return sum / 6;
}

}  // namespace tw
