// Words: a corner is a triangle's use of a point; two triangles are neighbours when they alone
// share an edge; a part is what hangs together by neighbours.
//
//  1 Points at one place are made one; triangles without area are dropped; sort the edges to find
//  neighbours. 2 Walk each part, turning a triangle that passes the shared edge the same way as the
//  one it is
//    come from; if more were turned than not, turn the whole part; if the part is closed and its
//    volume negative, turn it too.
//  3 Corners at one point are joined across each edge that bends by less than kRoundDeg (union by
//    smaller index); each set of joined corners becomes one point with the mean normal, weighted
//    by area.
// Cost: sorting three edges a triangle. Does badly: open parts that were wound inside out stay so.
#include "stage/smooth_mesh.h"

#include <Eigen/Geometry>
#include <algorithm>
#include <cmath>
#include <map>
#include <numbers>
#include <numeric>
#include <tuple>

namespace tw {

namespace {

using Triangle = std::array<std::uint32_t, 3>;
using Triangles = std::vector<Triangle>;

const double kRoundCosine = std::cos(40 * std::numbers::pi / 180);  // common practice, no source

struct Edge {
  std::uint32_t a, b;      ///< a < b
  std::uint32_t triangle;  ///< corner k is where the edge begins as the triangle goes round
  std::uint8_t corner;
};

Vec3 spanOf(const std::vector<Vec3>& points, const Triangle& t) {
  return (points[t[1]] - points[t[0]]).cross(points[t[2]] - points[t[0]]);
}

std::vector<Edge> edgesOf(const Triangles& triangles) {
  std::vector<Edge> edges;
  for (std::uint32_t i = 0; i < triangles.size(); ++i)
    for (std::uint8_t k = 0; k < 3; ++k) {
      const std::uint32_t a = triangles[i][k], b = triangles[i][(k + 1u) % 3];
      edges.push_back({std::min(a, b), std::max(a, b), i, k});
    }
  std::sort(edges.begin(), edges.end(), [](const Edge& x, const Edge& y) {
    return std::tie(x.a, x.b, x.triangle) < std::tie(y.a, y.b, y.triangle);
  });
  return edges;
}

struct Neighbour {
  std::uint32_t triangle;
  bool sameWay;  ///< both pass the edge in the same direction: one is wound wrongly
};

/// Up to three for each triangle.
std::vector<std::vector<Neighbour>> neighboursOf(const Triangles& triangles) {
  const std::vector<Edge> edges = edgesOf(triangles);
  std::vector<std::vector<Neighbour>> out(triangles.size());
  for (std::size_t i = 0; i < edges.size();) {
    std::size_t j = i;
    while (j < edges.size() && edges[j].a == edges[i].a && edges[j].b == edges[i].b) ++j;
    if (j - i == 2) {
      const Edge &x = edges[i], &y = edges[i + 1];
      const bool same = triangles[x.triangle][x.corner] == triangles[y.triangle][y.corner];
      out[x.triangle].push_back({y.triangle, same});
      out[y.triangle].push_back({x.triangle, same});
    }
    i = j;
  }
  return out;
}

void turn(Triangle& t) {
  std::swap(t[1], t[2]);
}

class Winding {
 public:
  Winding(const std::vector<Vec3>& points, Triangles& triangles)
      : points_(points),
        triangles_(triangles),
        neighbours_(neighboursOf(triangles)),
        turned_(triangles.size()),
        seen_(triangles.size()) {}

  void agree() {
    for (std::uint32_t i = 0; i < triangles_.size(); ++i)
      if (!seen_[i]) agreePart(i);
  }

 private:
  void agreePart(std::uint32_t start) {
    std::vector<std::uint32_t> part{start};
    seen_[start] = true;
    bool closed = true;
    std::size_t turnedHere = 0;
    for (std::size_t at = 0; at < part.size(); ++at) {
      const std::uint32_t i = part[at];
      closed = closed && neighbours_[i].size() == 3;
      turnedHere += turned_[i];
      for (const Neighbour& n : neighbours_[i]) {
        if (seen_[n.triangle]) continue;
        seen_[n.triangle] = true;
        turned_[n.triangle] = turned_[i] != n.sameWay;
        part.push_back(n.triangle);
      }
    }
    const bool mostly = 2 * turnedHere > part.size();
    for (const std::uint32_t i : part)
      if (turned_[i] != mostly) turn(triangles_[i]);
    if (closed && volumeOf(part) < 0)
      for (const std::uint32_t i : part) turn(triangles_[i]);
  }

  double volumeOf(const std::vector<std::uint32_t>& part) const {
    const Vec3 origin = points_[triangles_[part[0]][0]];
    double sum = 0;
    for (const std::uint32_t i : part) {
      const Triangle& t = triangles_[i];
      sum += (points_[t[0]] - origin).dot((points_[t[1]] - origin).cross(points_[t[2]] - origin));
    }
    return sum;
  }

  const std::vector<Vec3>& points_;
  Triangles& triangles_;
  std::vector<std::vector<Neighbour>> neighbours_;
  std::vector<char> turned_, seen_;
};

/// Which corners share a normal: a forest, each pointing to a smaller index.
class CornerSets {
 public:
  explicit CornerSets(std::size_t corners) : up_(corners) {
    std::iota(up_.begin(), up_.end(), std::uint32_t{0});
  }
  std::uint32_t first(std::uint32_t i) {
    while (up_[i] != i) i = up_[i] = up_[up_[i]];
    return i;
  }
  void join(std::uint32_t a, std::uint32_t b) {
    a = first(a), b = first(b);
    up_[std::max(a, b)] = std::min(a, b);
  }

 private:
  std::vector<std::uint32_t> up_;
};

CornerSets roundCorners(const std::vector<Vec3>& points, const Triangles& triangles) {
  CornerSets sets(3 * triangles.size());
  const std::vector<Edge> edges = edgesOf(triangles);
  for (std::size_t i = 0; i + 1 < edges.size(); ++i) {
    const Edge &x = edges[i], &y = edges[i + 1];
    if (x.a != y.a || x.b != y.b) continue;
    const Vec3 n = spanOf(points, triangles[x.triangle]), m = spanOf(points, triangles[y.triangle]);
    if (n.dot(m) < kRoundCosine * n.norm() * m.norm()) continue;
    const auto corner = [&](const Edge& e, std::uint32_t point) {
      const std::uint32_t k = triangles[e.triangle][e.corner] == point ? e.corner : e.corner + 1u;
      return 3 * e.triangle + k % 3;
    };
    sets.join(corner(x, x.a), corner(y, x.a));
    sets.join(corner(x, x.b), corner(y, x.b));
  }
  return sets;
}

/// Many exporters write each face's corners anew: points at the very same place become one.
void weld(const std::vector<Vec3>& points, Triangles& triangles) {
  std::vector<std::uint32_t> order(points.size()), first(points.size());
  std::iota(order.begin(), order.end(), std::uint32_t{0});
  const auto key = [&](std::uint32_t i) {
    return std::make_tuple(points[i].x(), points[i].y(), points[i].z());
  };
  std::sort(order.begin(), order.end(), [&](std::uint32_t i, std::uint32_t k) {
    return std::tuple_cat(key(i), std::make_tuple(i)) < std::tuple_cat(key(k), std::make_tuple(k));
  });
  for (std::size_t i = 0; i < order.size(); ++i)
    first[order[i]] = i > 0 && key(order[i]) == key(order[i - 1]) ? first[order[i - 1]] : order[i];
  for (Triangle& t : triangles)
    for (std::uint32_t& corner : t) corner = first[corner];
}

}  // namespace

Mesh smoothMesh(const std::vector<Vec3>& points, Triangles triangles) {
  weld(points, triangles);
  std::erase_if(triangles, [&](const Triangle& t) { return !(spanOf(points, t).norm() > 1e-14); });
  Winding(points, triangles).agree();
  CornerSets sets = roundCorners(points, triangles);
  std::map<std::uint32_t, std::uint32_t> pointOf;  // first corner of a set → its point
  Mesh mesh;
  for (std::uint32_t i = 0; i < triangles.size(); ++i) {
    const Vec3 span = spanOf(points, triangles[i]);
    Triangle made{};
    for (std::uint32_t k = 0; k < 3; ++k) {
      const auto [at, isNew] =
          pointOf.emplace(sets.first(3 * i + k), static_cast<std::uint32_t>(mesh.points.size()));
      if (isNew) {
        mesh.points.push_back(points[triangles[i][k]]);
        mesh.normals.push_back(Vec3::Zero());
      }
      made[k] = at->second;
      mesh.normals[at->second] += span;
    }
    mesh.triangles.push_back(made);
  }
  for (Vec3& normal : mesh.normals)
    normal = normal.norm() > 0 ? Vec3(normal.normalized()) : Vec3(Vec3::UnitY());
  mesh.part.assign(mesh.triangles.size(), 0);
  return mesh;
}

}  // namespace tw
