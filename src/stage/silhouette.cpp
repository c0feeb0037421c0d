// Contours of a mesh.
//
// Words: g = n·v with the smooth normal n of a point and the direction v from it to the eye; the
// contour is the set g = 0 (A. Hertzmann, D. Zorin 2000, "Illustrating smooth surfaces",
// doi:10.1145/344779.345074).
//
// Smooth contours:
//  1 g at every point; a triangle whose corners differ in sign holds one straight piece from edge
//    to edge, its ends interpolated on the edges.
//  2 Keep the piece only where g grows toward the eye. Elsewhere the surface bends the other way
//    and hides its own contour at once (J. Koenderink 1984, doi:10.1068/p130321): that removes the
//    flicker in elbows and armpits before any depth is asked.
//  3 Pieces are linked through the mesh edges they share.
//
// Creases: points at one place are made one, each edge compares the planes of its two triangles,
// and edges are linked where exactly two meet without a sharp turn.
//
// Cost: linear in triangles, plus sorting the few hundred pieces. Does badly: where separate
// volumes run into each other there is no line at their seam; visible_lines joins such ends.
#include "stage/silhouette.h"

#include <Eigen/Geometry>
#include <algorithm>
#include <cmath>
#include <cstdint>
#include <numbers>

namespace tw {

namespace {

/// Two points to be linked with others that carry the same key at an end.
struct Piece {
  std::array<std::uint64_t, 2> key;
  std::array<ContourPoint, 2> end;
};

struct EndOf {
  std::uint64_t key;
  std::uint32_t piece;
  std::uint8_t which;
};

std::uint64_t edgeKey(std::uint32_t a, std::uint32_t b) {
  return (static_cast<std::uint64_t>(std::min(a, b)) << 32) | std::max(a, b);
}

/// For each piece's end the piece's end it continues in, or −1; only where two meet.
std::vector<std::array<std::int64_t, 2>> partners(const std::vector<Piece>& pieces,
                                                  double leastCosine) {
  std::vector<EndOf> ends;
  for (std::uint32_t i = 0; i < pieces.size(); ++i)
    for (std::uint8_t w = 0; w < 2; ++w) ends.push_back({pieces[i].key[w], i, w});
  std::sort(ends.begin(), ends.end(), [](const EndOf& a, const EndOf& b) {
    return std::tie(a.key, a.piece, a.which) < std::tie(b.key, b.piece, b.which);
  });
  const auto outward = [&](const EndOf& e) {
    const Piece& p = pieces[e.piece];
    return Vec3(p.end[e.which].at - p.end[1 - e.which].at).normalized();
  };
  std::vector<std::array<std::int64_t, 2>> next(pieces.size(), {-1, -1});
  for (std::size_t i = 0; i < ends.size();) {
    std::size_t j = i;
    while (j < ends.size() && ends[j].key == ends[i].key) ++j;
    const EndOf &a = ends[i], &b = ends[j - 1];
    if (j - i == 2 && -outward(a).dot(outward(b)) >= leastCosine) {
      next[a.piece][a.which] = 2 * static_cast<std::int64_t>(b.piece) + b.which;
      next[b.piece][b.which] = 2 * static_cast<std::int64_t>(a.piece) + a.which;
    }
    i = j;
  }
  return next;
}

/// Walks from `piece` out of its end `which`, marking pieces used and adding their far ends.
void walk(const std::vector<Piece>& pieces, const std::vector<std::array<std::int64_t, 2>>& next,
          std::uint32_t piece, std::uint8_t which, std::vector<bool>& used,
          std::vector<ContourPoint>& out) {
  for (;;) {
    used[piece] = true;
    out.push_back(pieces[piece].end[which]);
    const std::int64_t to = next[piece][which];
    if (to < 0 || used[static_cast<std::size_t>(to / 2)]) return;
    piece = static_cast<std::uint32_t>(to / 2);
    which = static_cast<std::uint8_t>(1 - to % 2);
  }
}

std::vector<ContourChain> linked(const std::vector<Piece>& pieces, LineKind kind,
                                 double leastCosine) {
  const auto next = partners(pieces, leastCosine);
  std::vector<bool> used(pieces.size(), false);
  std::vector<ContourChain> chains;
  const auto start = [&](std::uint32_t i, std::uint8_t from) {
    ContourChain chain;
    chain.kind = kind;
    chain.points.push_back(pieces[i].end[from]);
    walk(pieces, next, i, static_cast<std::uint8_t>(1 - from), used, chain.points);
    chain.closed = next[i][from] >= 0;
    chains.push_back(std::move(chain));
  };
  for (std::uint32_t i = 0; i < pieces.size(); ++i)  // open chains from their ends
    for (std::uint8_t w = 0; w < 2; ++w)
      if (!used[i] && next[i][w] < 0) start(i, w);
  for (std::uint32_t i = 0; i < pieces.size(); ++i)  // what is left goes around
    if (!used[i]) start(i, 0);
  return chains;
}

/// g grows when going along the surface toward the eye: the contour can be seen.
bool bulgesTowardEye(const Mesh& mesh, const std::array<std::uint32_t, 3>& t,
                     const std::vector<double>& g, const Vec3& eye) {
  const Vec3 &a = mesh.points[t[0]], &b = mesh.points[t[1]], &c = mesh.points[t[2]];
  const Vec3 u = b - a, v = c - a, toEye = eye - (a + b + c) / 3;
  const double uu = u.dot(u), uv = u.dot(v), vv = v.dot(v);
  const double det = uu * vv - uv * uv;
  if (det <= 0) return false;
  const double wu = toEye.dot(u), wv = toEye.dot(v);
  const double alongU = (vv * wu - uv * wv) / det, alongV = (uu * wv - uv * wu) / det;
  return alongU * (g[t[1]] - g[t[0]]) + alongV * (g[t[2]] - g[t[0]]) > 0;
}

ContourPoint onEdge(const Mesh& mesh, const std::vector<double>& g, std::uint32_t a,
                    std::uint32_t b) {
  if (a > b) std::swap(a, b);  // both triangles must find the very same point
  const double t = g[a] / (g[a] - g[b]);
  const Vec3 normal = mesh.normals[a] + t * (mesh.normals[b] - mesh.normals[a]);
  return {mesh.points[a] + t * (mesh.points[b] - mesh.points[a]), normal.normalized()};
}

/// Index of the first point at the same place, for each point.
std::vector<std::uint32_t> atOnePlace(const Mesh& mesh) {
  constexpr double kPerMetre = 1e5;
  struct Spot {
    std::array<std::int64_t, 3> at;
    std::uint32_t index;
    auto operator<=>(const Spot&) const = default;
  };
  std::vector<Spot> spots;
  for (std::uint32_t i = 0; i < mesh.points.size(); ++i) {
    const Vec3& p = mesh.points[i];
    spots.push_back({{std::llround(p.x() * kPerMetre), std::llround(p.y() * kPerMetre),
                      std::llround(p.z() * kPerMetre)},
                     i});
  }
  std::sort(spots.begin(), spots.end());
  std::vector<std::uint32_t> first(mesh.points.size());
  for (std::size_t i = 0; i < spots.size(); ++i)
    first[spots[i].index] =
        i > 0 && spots[i].at == spots[i - 1].at ? first[spots[i - 1].index] : spots[i].index;
  return first;
}

struct Side {
  std::uint64_t edge;
  std::uint32_t triangle;
  auto operator<=>(const Side&) const = default;
};

std::vector<Side> sidesOf(const Mesh& mesh, const std::vector<std::uint32_t>& first) {
  std::vector<Side> sides;
  for (std::uint32_t i = 0; i < mesh.triangles.size(); ++i)
    for (std::size_t e = 0; e < 3; ++e) {
      const auto& t = mesh.triangles[i];
      const std::uint32_t a = first[t[e]], b = first[t[(e + 1) % 3]];
      if (a != b) sides.push_back({edgeKey(a, b), i});
    }
  std::sort(sides.begin(), sides.end());
  return sides;
}

/// The triangle's plane normal, on the side that its points' normals name.
Vec3 faceNormal(const Mesh& mesh, std::uint32_t triangle) {
  const auto& t = mesh.triangles[triangle];
  const Vec3& a = mesh.points[t[0]];
  const Vec3 n = (mesh.points[t[1]] - a).cross(mesh.points[t[2]] - a).normalized();
  const Vec3 named = mesh.normals[t[0]] + mesh.normals[t[1]] + mesh.normals[t[2]];
  return n.dot(named) < 0 ? Vec3(-n) : n;
}

bool crossesZero(const std::array<std::uint32_t, 3>& t, const std::vector<double>& g) {
  const bool first = g[t[0]] >= 0;
  return (g[t[1]] >= 0) != first || (g[t[2]] >= 0) != first;
}

/// The straight piece of g = 0 inside a triangle that it crosses.
Piece zeroLine(const Mesh& mesh, const std::array<std::uint32_t, 3>& t,
               const std::vector<double>& g) {
  Piece piece;
  std::size_t found = 0;
  for (std::size_t e = 0; e < 3; ++e) {
    const std::uint32_t a = t[e], b = t[(e + 1) % 3];
    if ((g[a] >= 0) == (g[b] >= 0)) continue;
    piece.key[found] = edgeKey(a, b);
    piece.end[found++] = onEdge(mesh, g, a, b);
  }
  return piece;
}

}  // namespace

std::vector<ContourChain> smoothContours(const Mesh& mesh, const Vec3& eye) {
  std::vector<double> g(mesh.points.size());
  for (std::size_t i = 0; i < g.size(); ++i)
    g[i] = mesh.normals[i].dot((eye - mesh.points[i]).normalized());
  std::vector<Piece> pieces;
  for (const auto& t : mesh.triangles)
    if (crossesZero(t, g) && bulgesTowardEye(mesh, t, g, eye))
      pieces.push_back(zeroLine(mesh, t, g));
  return linked(pieces, LineKind::Contour, -1);
}

std::vector<ContourChain> creases(const Mesh& mesh, const Vec3& eye, double leastAngleDeg) {
  constexpr double kCornerCosine = 0.75;  // a turn of more than 41 degrees is a corner
  const double sharp = std::cos(leastAngleDeg * std::numbers::pi / 180);
  const std::vector<std::uint32_t> first = atOnePlace(mesh);
  const std::vector<Side> sides = sidesOf(mesh, first);
  std::vector<Piece> outer, inner;
  for (std::size_t i = 0; i < sides.size();) {
    std::size_t j = i;
    while (j < sides.size() && sides[j].edge == sides[i].edge) ++j;
    const auto a = static_cast<std::uint32_t>(sides[i].edge >> 32);
    const auto b = static_cast<std::uint32_t>(sides[i].edge & 0xffffffffu);
    const Vec3 toEye = eye - (mesh.points[a] + mesh.points[b]) / 2;
    const Vec3 n = faceNormal(mesh, sides[i].triangle);
    const Vec3 m = faceNormal(mesh, sides[j - 1].triangle);
    const bool open = j - i == 1;
    const bool seenN = n.dot(toEye) > 0, seenM = m.dot(toEye) > 0;
    if (open || (n.dot(m) < sharp && (seenN || seenM))) {
      const Vec3 normal = open ? n : Vec3((n + m).normalized());
      const Piece piece{
          {a, b}, {ContourPoint{mesh.points[a], normal}, ContourPoint{mesh.points[b], normal}}};
      (open || seenN != seenM ? outer : inner).push_back(piece);
    }
    i = j;
  }
  std::vector<ContourChain> chains = linked(outer, LineKind::Contour, kCornerCosine);
  for (ContourChain& chain : linked(inner, LineKind::Crease, kCornerCosine))
    chains.push_back(std::move(chain));
  return chains;
}

}  // namespace tw
