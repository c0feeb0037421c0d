// Lofts over rings.
//
// 1. Stations are refined by uniform Catmull–Rom interpolation of every number (E. Catmull,
//    R. Rom 1974), then each ring's axes are made perpendicular again. Radii never fall below 0.
// 2. Each ring becomes points: unit circle mixed with a squarer one (superellipse of power 4),
//    scaled by the radius of its quadrant. Neighbouring quadrants share their tangent.
// 3. Ends close by rings shrinking along a quarter ellipse to a pole.
// 4. Winding: all triangles of a loft are turned over when its signed volume comes out negative.
// Cost: linear in rings × points around. It does badly where rings cross each other (a bend tighter
// than its radius); bodies avoid that by a loft per bone, rounded at the joint.
#include "stage/loft.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace tw {
namespace {

constexpr int kMostAround = 32;

struct UnitRing {
  int count = 0;
  double x[kMostAround], y[kMostAround], squareX[kMostAround], squareY[kMostAround];
};

double rooted(double v) {
  return std::copysign(std::sqrt(std::abs(v)), v);
}

UnitRing unitRing(int around) {
  UnitRing unit;
  unit.count = std::min(around, kMostAround);
  for (int i = 0; i < unit.count; ++i) {
    const double angle = 2 * std::numbers::pi * i / unit.count;
    unit.x[i] = std::cos(angle);
    unit.y[i] = std::sin(angle);
    unit.squareX[i] = rooted(unit.x[i]);
    unit.squareY[i] = rooted(unit.y[i]);
  }
  return unit;
}

void addRing(Mesh& mesh, const Ring& ring, const UnitRing& unit, double scale, const Vec3& shift) {
  const double square = ring.square;
  for (int i = 0; i < unit.count; ++i) {
    const double x = (1 - square) * unit.x[i] + square * unit.squareX[i];
    const double y = (1 - square) * unit.y[i] + square * unit.squareY[i];
    const double across = scale * x * (x > 0 ? ring.toRight : ring.toLeft);
    const double along = scale * y * (y > 0 ? ring.toFront : ring.toBack);
    mesh.points.push_back(ring.centre + shift + across * ring.right + along * ring.front);
  }
}

template <class Number>
Number throughFour(const Number& a, const Number& b, const Number& c, const Number& d, double t) {
  const double t2 = t * t, t3 = t2 * t;
  return 0.5 * ((2.0 * b) + (c - a) * t + (2.0 * a - 5.0 * b + 4.0 * c - d) * t2 +
                (3.0 * b - a - 3.0 * c + d) * t3);
}

Ring between(const Ring& a, const Ring& b, const Ring& c, const Ring& d, double t) {
  Ring out;
  out.centre = throughFour(a.centre, b.centre, c.centre, d.centre, t);
  out.right = (b.right + t * (c.right - b.right)).normalized();
  const Vec3 front = b.front + t * (c.front - b.front);
  out.front = (front - front.dot(out.right) * out.right).normalized();
  const auto radius = [&](double Ring::*side) {
    return std::max(0.0, throughFour(a.*side, b.*side, c.*side, d.*side, t));
  };
  out.toRight = radius(&Ring::toRight);
  out.toLeft = radius(&Ring::toLeft);
  out.toFront = radius(&Ring::toFront);
  out.toBack = radius(&Ring::toBack);
  out.square = std::clamp(b.square + t * (c.square - b.square), 0.0, 1.0);
  return out;
}

/// Rings of the rounded end beyond `ring`, from the pole inward (`outward` points to the pole).
void addEnd(Mesh& mesh, const Ring& ring, const UnitRing& unit, const Vec3& outward, int caps,
            bool first) {
  if (first) mesh.points.push_back(ring.centre + outward);
  for (int i = 1; i <= caps; ++i) {
    const int step = first ? i : caps + 1 - i;
    const double angle = 0.5 * std::numbers::pi * step / (caps + 1);
    addRing(mesh, ring, unit, std::sin(angle), std::cos(angle) * outward);
  }
  if (!first) mesh.points.push_back(ring.centre + outward);
}

void addFaces(Mesh& mesh, std::uint32_t first, std::uint32_t rings, std::uint32_t around) {
  const std::uint32_t body = first + 1, last = body + rings * around;
  for (std::uint32_t i = 0; i < around; ++i) {
    const std::uint32_t j = (i + 1) % around;
    mesh.triangles.push_back({first, body + j, body + i});
    for (std::uint32_t r = 0; r + 1 < rings; ++r) {
      const std::uint32_t a = body + r * around, b = a + around;
      mesh.triangles.push_back({a + i, a + j, b + i});
      mesh.triangles.push_back({a + j, b + j, b + i});
    }
    const std::uint32_t top = body + (rings - 1) * around;
    mesh.triangles.push_back({top + i, top + j, last});
  }
}

void turnOutward(Mesh& mesh, std::size_t firstPoint, std::size_t firstTriangle) {
  double volume = 0;
  const Vec3 origin = mesh.points[firstPoint];
  for (std::size_t t = firstTriangle; t < mesh.triangles.size(); ++t) {
    const auto& [a, b, c] = mesh.triangles[t];
    volume +=
        (mesh.points[a] - origin).dot((mesh.points[b] - origin).cross(mesh.points[c] - origin));
  }
  if (volume >= 0) return;
  for (std::size_t t = firstTriangle; t < mesh.triangles.size(); ++t)
    std::swap(mesh.triangles[t][1], mesh.triangles[t][2]);
}

}  // namespace

Fineness finenessOf(double detail) {
  if (detail >= 0.8) return {12, 2, 2};
  if (detail >= 0.5) return {10, 2, 1};
  return {8, 1, 1};
}

std::vector<Ring> smoothed(const std::vector<Ring>& stations, int along) {
  if (along <= 1 || stations.size() < 2) return stations;
  std::vector<Ring> out;
  out.reserve(stations.size() * static_cast<std::size_t>(along));
  const std::size_t last = stations.size() - 1;
  for (std::size_t i = 0; i < last; ++i) {
    const Ring& before = stations[i > 0 ? i - 1 : 0];
    const Ring& after = stations[std::min(i + 2, last)];
    for (int k = 0; k < along; ++k)
      out.push_back(between(before, stations[i], stations[i + 1], after, double(k) / along));
  }
  out.push_back(stations[last]);
  return out;
}

void addLoft(Mesh& mesh, const std::vector<Ring>& rings, Ends ends, const Fineness& fine,
             BodyPart part) {
  const UnitRing unit = unitRing(fine.around);
  const std::size_t firstPoint = mesh.points.size(), firstTriangle = mesh.triangles.size();
  const auto outward = [](const Ring& ring, const Vec3& next, double by) -> Vec3 {
    const Vec3 normal = ring.right.cross(ring.front);
    return normal * (normal.dot(next - ring.centre) > 0 ? -by : by);
  };
  const int caps = fine.caps;
  addEnd(mesh, rings.front(), unit, outward(rings.front(), rings[1].centre, ends.first),
         ends.first > 0 ? caps : 0, true);
  for (const Ring& ring : rings) addRing(mesh, ring, unit, 1, Vec3::Zero());
  addEnd(mesh, rings.back(), unit, outward(rings.back(), rings[rings.size() - 2].centre, ends.last),
         ends.last > 0 ? caps : 0, false);
  const int total =
      static_cast<int>(rings.size()) + (ends.first > 0 ? caps : 0) + (ends.last > 0 ? caps : 0);
  addFaces(mesh, static_cast<std::uint32_t>(firstPoint), static_cast<std::uint32_t>(total),
           static_cast<std::uint32_t>(unit.count));
  turnOutward(mesh, firstPoint, firstTriangle);
  mesh.part.resize(mesh.triangles.size(), static_cast<std::uint8_t>(part));
}

void shadeSmoothly(Mesh& mesh, std::size_t firstPoint, std::size_t firstTriangle) {
  mesh.normals.resize(firstPoint);
  mesh.normals.resize(mesh.points.size(), Vec3::Zero());
  for (std::size_t t = firstTriangle; t < mesh.triangles.size(); ++t) {
    const auto& [a, b, c] = mesh.triangles[t];
    const Vec3 normal = (mesh.points[b] - mesh.points[a]).cross(mesh.points[c] - mesh.points[a]);
    for (const std::uint32_t corner : {a, b, c}) mesh.normals[corner] += normal;
  }
  for (std::size_t i = firstPoint; i < mesh.points.size(); ++i) {
    const double length = mesh.normals[i].norm();
    mesh.normals[i] = length > 0 ? Vec3(mesh.normals[i] / length) : Vec3(0, 1, 0);
  }
}

}  // namespace tw
