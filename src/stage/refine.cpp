// Finer meshes for close views.
//
// Idea: Phong tessellation (T. Boubekeur, M. Alexa 2008, doi:10.1145/1409060.1409094): the middle
// of an edge is moved toward its projections onto the tangent planes of the edge's two points.
// The new point depends on these two alone, so triangles that share an edge stay joined.
//
// Steps: 1 leave out what the frame does not show; 2 measure sides on the picture; 3 split all
// while the larger sides are long and the count allows.
// Cost: linear in the triangles made. Does badly: folds sharper than the mesh's own sides are
// rounded a little; boxes keep straight edges, since their normals are those of the faces.
#include "stage/refine.h"

#include <Eigen/Geometry>
#include <algorithm>
#include <cmath>

namespace tw {

namespace {

constexpr double kBend = 0.75;     // of the way onto the tangent planes; the authors' choice
constexpr double kLongSidePx = 9;  // at 600 px a facet of this length shows as a corner
constexpr std::size_t kMostTriangles = 24000;
constexpr double kMargin = 0.06;  // frame widths
constexpr double kNear = 0.05;    // m; as the renderer's

struct Middle {
  std::uint64_t edge;
  std::size_t triangle;
  std::uint8_t side;
};

Vec3 bentMiddle(const Mesh& mesh, std::uint32_t a, std::uint32_t b) {
  const Vec3 flat = (mesh.points[a] + mesh.points[b]) / 2;
  const auto onPlane = [&](std::uint32_t i) {
    return Vec3(flat - mesh.normals[i] * mesh.normals[i].dot(flat - mesh.points[i]));
  };
  return flat + kBend * ((onPlane(a) + onPlane(b)) / 2 - flat);
}

/// Length of a side that 9 of 10 sides stay under, px.
double longSide(const Mesh& mesh, const Camera& camera, int width) {
  std::vector<double> lengths;
  const auto place = [&](std::uint32_t i) { return camera.projectAlways(mesh.points[i]); };
  for (const auto& t : mesh.triangles) {
    if (std::min({camera.depth(mesh.points[t[0]]), camera.depth(mesh.points[t[1]]),
                  camera.depth(mesh.points[t[2]])}) < kNear)
      continue;
    lengths.push_back((place(t[1]) - place(t[0])).length() * width);
    lengths.push_back((place(t[2]) - place(t[1])).length() * width);
  }
  if (lengths.empty()) return 0;
  const auto nth = lengths.begin() + static_cast<std::ptrdiff_t>(lengths.size() * 9 / 10);
  std::nth_element(lengths.begin(), nth, lengths.end());
  return *nth;
}

}  // namespace

Mesh withinFrame(const Mesh& mesh, const Camera& camera) {
  const double bottom = 1 / camera.aspect() + kMargin;
  // One bit per side of the frame that the point lies beyond; behind the lens counts as none.
  std::vector<std::uint8_t> beyond(mesh.points.size(), 0);
  for (std::size_t i = 0; i < beyond.size(); ++i) {
    if (camera.depth(mesh.points[i]) < kNear) continue;
    const Point p = camera.projectAlways(mesh.points[i]);
    beyond[i] = static_cast<std::uint8_t>((p.x < -kMargin) | (p.x > 1 + kMargin) << 1 |
                                          (p.y < -kMargin) << 2 | (p.y > bottom) << 3);
  }
  Mesh out;
  out.points = mesh.points;
  out.normals = mesh.normals;
  for (std::size_t i = 0; i < mesh.triangles.size(); ++i) {
    const auto& t = mesh.triangles[i];
    if (beyond[t[0]] & beyond[t[1]] & beyond[t[2]]) continue;
    out.triangles.push_back(t);
    out.part.push_back(mesh.part[i]);
  }
  return out;
}

std::vector<Vec3> surfaceNormals(const Mesh& mesh) {
  std::vector<Vec3> normals(mesh.points.size(), Vec3::Zero());
  for (const auto& t : mesh.triangles) {
    const Vec3& a = mesh.points[t[0]];
    const Vec3 n = (mesh.points[t[1]] - a).cross(mesh.points[t[2]] - a);
    for (const std::uint32_t i : t) normals[i] += n;
  }
  for (std::size_t i = 0; i < normals.size(); ++i)
    normals[i] = normals[i].norm() > 1e-15 ? Vec3(normals[i].normalized()) : mesh.normals[i];
  return normals;
}

Mesh refinedOnce(const Mesh& mesh, std::vector<Vec3>* light) {
  std::vector<Middle> sides;
  for (std::size_t i = 0; i < mesh.triangles.size(); ++i)
    for (std::uint8_t e = 0; e < 3; ++e) {
      const std::uint32_t a = mesh.triangles[i][e], b = mesh.triangles[i][(e + 1u) % 3];
      sides.push_back({(static_cast<std::uint64_t>(std::min(a, b)) << 32) | std::max(a, b), i, e});
    }
  std::sort(sides.begin(), sides.end(), [](const Middle& x, const Middle& y) {
    return std::tie(x.edge, x.triangle, x.side) < std::tie(y.edge, y.triangle, y.side);
  });
  Mesh out;
  out.points = mesh.points;
  out.normals = mesh.normals;
  std::vector<std::array<std::uint32_t, 3>> middle(mesh.triangles.size());
  for (std::size_t i = 0; i < sides.size(); ++i) {
    if (i == 0 || sides[i].edge != sides[i - 1].edge) {
      const auto a = static_cast<std::uint32_t>(sides[i].edge >> 32);
      const auto b = static_cast<std::uint32_t>(sides[i].edge & 0xffffffffu);
      out.points.push_back(bentMiddle(mesh, a, b));
      out.normals.push_back((mesh.normals[a] + mesh.normals[b]).normalized());
      if (light) light->push_back(((*light)[a] + (*light)[b]).normalized());
    }
    middle[sides[i].triangle][sides[i].side] = static_cast<std::uint32_t>(out.points.size() - 1);
  }
  for (std::size_t i = 0; i < mesh.triangles.size(); ++i) {
    const auto& [a, b, c] = mesh.triangles[i];
    const auto& [ab, bc, ca] = middle[i];
    for (const auto& t : {std::array{a, ab, ca}, {ab, b, bc}, {ca, bc, c}, {ab, bc, ca}}) {
      out.triangles.push_back(t);
      out.part.push_back(mesh.part[i]);
    }
  }
  return out;
}

FineBody fineBody(const Mesh& mesh, const Camera& camera, int width) {
  FineBody fine{withinFrame(mesh, camera), mesh.normals};
  // From the whole mesh: at the frame's edge the left-out neighbours count too.
  fine.surface.normals = surfaceNormals(mesh);
  while (!fine.surface.triangles.empty() && fine.surface.triangles.size() * 4 <= kMostTriangles &&
         longSide(fine.surface, camera, width) > kLongSidePx)
    fine.surface = refinedOnce(fine.surface, &fine.light);
  return fine;
}

}  // namespace tw
