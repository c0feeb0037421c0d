#include "stage/building_shapes.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "stage/solid_shapes.h"

namespace tw {

namespace {

constexpr double kPi = std::numbers::pi;
constexpr int kArchFacets = 16;  // even, so that the crown is a corner

/// The opening as it fits into the wall: some wall stays beside, above and, with a sill, below it.
Opening fitted(Opening o, const std::array<double, 3>& size) {
  constexpr double kLeastShare = 0.04;
  const double side = kLeastShare * size[0], top = kLeastShare * size[1];
  o.width = std::clamp(o.width, 1e-3, size[0] - 2 * side);
  const double room = (size[0] - o.width) / 2 - side;
  o.across = std::clamp(o.across, -room, room);
  o.sill = o.sill <= 0 ? 0 : std::clamp(o.sill, top, size[1] - 3 * top);
  o.height = std::clamp(o.height, top, size[1] - o.sill - top);
  return o;
}

/// The head of the opening from its right jamb over the crown to its left one, at its middle x = 0.
/// `foot` is the level at which the head begins.
Outline headOf(const Opening& o, double& foot) {
  const double half = o.width / 2, top = o.sill + o.height;
  if (!o.arched) {
    foot = top;
    return {{half, top}, {0, top}, {-half, top}};
  }
  const double rise = std::min(half, 0.9 * o.height);
  foot = top - rise;
  Outline head;
  for (int i = 0; i <= kArchFacets; ++i) {
    const double a = kPi * i / kArchFacets;
    head.push_back({half * std::cos(a), foot + rise * std::sin(a)});
  }
  head.front() = {half, foot};
  head.back() = {-half, foot};
  head[kArchFacets / 2] = {0, top};
  return head;
}

Outline movedAcross(Outline outline, double by) {
  for (Point& p : outline) p.x += by;
  return outline;
}

/// One polygon around a doorway.
Mesh doorwayWall(const std::array<double, 3>& size, const Opening& o, const Outline& head) {
  const double half = size[0] / 2, high = size[1], left = o.across - o.width / 2;
  Outline outline{{-half, 0}, {left, 0}};
  outline.insert(outline.end(), head.rbegin(), head.rend());
  for (const Point p : {Point{o.across + o.width / 2, 0}, Point{half, 0}, Point{half, high},
                        Point{o.across, high}, Point{-half, high}})
    outline.push_back(p);
  return slabMesh(outline, size[2]);
}

/// Two polygons, left and right of a line through the window's middle.
Mesh windowWall(const std::array<double, 3>& size, const Opening& o, const Outline& head) {
  const double half = size[0] / 2, high = size[1], x = o.across, w = o.width / 2;
  const auto crown = static_cast<std::ptrdiff_t>(head.size() / 2);
  Outline right{{x, 0}, {half, 0}, {half, high}, {x, high}};
  right.insert(right.end(), head.rend() - crown - 1, head.rend());
  right.insert(right.end(), {{x + w, o.sill}, {x, o.sill}});
  Outline left{{x, o.sill}, {x - w, o.sill}};
  left.insert(left.end(), head.rbegin(), head.rend() - crown);
  left.insert(left.end(), {{x, high}, {-half, high}, {-half, 0}, {x, 0}});
  Outline hole{{x, o.sill}, {x - w, o.sill}};
  hole.insert(hole.end(), head.rbegin(), head.rend());
  hole.push_back({x + w, o.sill});
  const Outline around{{-half, 0}, {x, 0}, {half, 0}, {half, high}, {x, high}, {-half, high}};
  return slabMesh({left, right}, {around, hole}, size[2]);
}

Mesh turned(Mesh mesh, double headingDeg) {
  return placed(std::move(mesh), {}, headingDeg);
}

Mesh box(double w, double h, double d) {
  return boxMesh({w, h, d});
}

}  // namespace

Mesh wallMesh(const std::array<double, 3>& size, const Opening& wanted) {
  const Opening o = fitted(wanted, size);
  double foot = 0;
  const Outline head = movedAcross(headOf(o, foot), o.across);
  return o.sill > 0 ? windowWall(size, o, head) : doorwayWall(size, o, head);
}

double areaOf(const Opening& o) {
  double foot = 0;
  Outline hole = headOf(o, foot);
  hole.push_back({-o.width / 2, o.sill});
  hole.push_back({o.width / 2, o.sill});
  double sum = 0;
  for (std::size_t i = 0; i < hole.size(); ++i) {
    const Point a = hole[i], b = hole[(i + 1) % hole.size()];
    sum += a.x * b.y - b.x * a.y;
  }
  return std::abs(sum) / 2;
}

Mesh archMesh(const std::array<double, 3>& size) {
  return wallMesh(size, {.width = 0.62 * size[0], .height = 0.84 * size[1], .arched = true});
}

Mesh doorwayMesh(const std::array<double, 3>& size) {
  return wallMesh(size, {.width = 0.62 * size[0], .height = 0.84 * size[1]});
}

Mesh doorMesh(const std::array<double, 3>& size) {
  const double w = size[0], h = size[1], thick = std::max(size[2], 0.05), jamb = 0.09 * w;
  Mesh mesh = wallMesh({w, h, 1.8 * thick}, {.width = w - 2 * jamb, .height = h - jamb});
  const double leaf = w - 2 * jamb - 0.01;
  append(mesh, box(leaf, h - jamb - 0.01, 0.5 * thick), {0, 0.005, 0});
  for (const double y : {0.1, 0.53})  // panels, raised on both sides
    for (const double x : {-0.23, 0.23})
      append(mesh, box(0.34 * leaf, 0.33 * h, 0.72 * thick), {x * leaf, y * h, 0});
  append(mesh, ellipsoidMesh({0.06, 0.06, 2.4 * thick}, 12), {0.41 * leaf, 0.47 * h, 0});
  return mesh;
}

Mesh windowMesh(const std::array<double, 3>& size) {
  const double w = size[0], h = size[1], frame = 0.08 * std::min(w, h), thick = size[2];
  Mesh mesh = wallMesh(size, {.width = w - 2 * frame, .sill = frame, .height = h - 2 * frame});
  const double bar = 0.4 * frame;
  append(mesh, box(bar, h - 2 * frame, 0.5 * thick), {0, frame, 0});
  append(mesh, box(w - 2 * frame, bar, 0.5 * thick), {0, 0.55 * h, 0});
  append(mesh, box(1.12 * w, frame, 1.6 * thick + 0.06), {0, -0.2 * frame, 0});  // the sill
  for (Vec3& p : mesh.points) p.y() = std::max(p.y(), 0.0);
  return mesh;
}

Mesh stairsMesh(const std::array<double, 3>& size, int steps) {
  constexpr double kRiserM = 0.18;
  const int n =
      std::clamp(steps > 0 ? steps : static_cast<int>(std::lround(size[1] / kRiserM)), 1, 200);
  Outline side{{0, 0}};
  for (int i = 0; i < n; ++i) {
    side.push_back({size[2] * i / n, size[1] * (i + 1) / n});
    side.push_back({size[2] * (i + 1) / n, size[1] * (i + 1) / n});
  }
  side.push_back({size[2], 0});
  std::reverse(side.begin(), side.end());
  // The slab lies along z; turned, its x runs away from the camera.
  return placed(slabMesh(movedAcross(side, -size[2] / 2), size[0]), {}, 90);
}

Mesh ladderMesh(const std::array<double, 3>& size) {
  constexpr double kRungsApartM = 0.28;
  const double w = size[0], h = size[1], rail = std::clamp(0.13 * w, 0.03, 0.09);
  Mesh mesh;
  for (const double side : {-1.0, 1.0})
    append(mesh, box(rail, h, std::max(size[2], 0.02)), {side * (w - rail) / 2, 0, 0});
  const int rungs = std::clamp(static_cast<int>(h / kRungsApartM), 1, 60);
  Mesh rung = placed(cylinderMesh({0.6 * rail, w - 2 * rail, 0.6 * rail}, 10), {}, 90, 90, true);
  for (int i = 0; i < rungs; ++i) append(mesh, rung, {0, h * (i + 0.5) / rungs, 0});
  return mesh;
}

Mesh groundMesh(const std::array<double, 3>& size) {
  Mesh mesh;
  const double x = size[0] / 2, z = size[2] / 2;
  addFace(mesh, {{-x, 0, -z}, {x, 0, -z}, {x, 0, z}, {-x, 0, z}}, Vec3::UnitY());
  windOutward(mesh);
  return mesh;
}

Mesh pyramidMesh(const std::array<double, 3>& size) {
  const double x = size[0] / 2, z = size[2] / 2, h = size[1];
  const Vec3 top(0, h, 0), a(-x, 0, -z), b(x, 0, -z), c(x, 0, z), d(-x, 0, z);
  Mesh mesh;
  addFace(mesh, {a, b, top}, Vec3(0, z, -h).normalized());
  addFace(mesh, {c, d, top}, Vec3(0, z, h).normalized());
  addFace(mesh, {b, c, top}, Vec3(h, x, 0).normalized());
  addFace(mesh, {d, a, top}, Vec3(-h, x, 0).normalized());
  addFace(mesh, {a, b, c, d}, -Vec3::UnitY());
  windOutward(mesh);
  return mesh;
}

Mesh houseMesh(const std::array<double, 3>& size) {
  const double w = size[0], h = size[1], d = size[2], eaves = 0.66 * h;
  // A gable's outline along the depth, turned so that the ridge runs across.
  const Outline gable{{-d / 2, 0}, {d / 2, 0}, {d / 2, eaves}, {0, h}, {-d / 2, eaves}};
  Mesh mesh = placed(slabMesh(gable, w), {}, -90);
  const int across = std::max(1, static_cast<int>(w / 1.9));
  const int floors = std::max(1, static_cast<int>(eaves / 2.4));
  const double proud = d + 0.08;  // frames stand out of the wall a little, front and back
  for (int i = 0; i < across; ++i)
    for (int k = 0; k < floors; ++k) {
      const double x = w * ((i + 0.5) / across - 0.5), y = eaves * (k + 0.3) / floors;
      const bool door = k == 0 && i == across / 2;
      append(mesh, box(0.9, door ? 2.05 : 1.1, proud), {x, door ? 0 : y, 0});
    }
  append(mesh, box(0.55, 0.3 * h, 0.55), {0.3 * w, 0.84 * h, 0});
  return mesh;
}

namespace {

/// The four sides of a square room without floor and lid, each with the opening; corners overlap.
void addFourWalls(Mesh& mesh, double wide, double high, double thick, const Opening& opening,
                  double base) {
  for (const double heading : {0.0, 90.0, 180.0, 270.0}) {
    const bool inner = heading == 90 || heading == 270;
    const std::array<double, 3> size{inner ? wide - 2 * thick : wide, high, thick};
    Mesh wall = wallMesh(size, opening);
    append(mesh, turned(placed(std::move(wall), {0, 0, -(wide - thick) / 2}, 0), heading),
           {0, base, 0});
  }
}

/// Stones left standing of a wall's top: heights from a fixed ragged row.
void addRaggedTop(Mesh& mesh, double wide, double thick, double high, double base) {
  constexpr std::array<double, 9> kRagged{1.0, 0.62, 0.8, 0.34, 0.12, 0.0, 0.2, 0.46, 0.9};
  const double step = wide / kRagged.size();
  for (int side = 0; side < 4; ++side) {
    Outline edge{{-wide / 2, 0}, {wide / 2, 0}};
    for (std::size_t i = kRagged.size(); i-- > 0;) {
      // Round the tower the row runs on, so that corners meet at about one height.
      const std::size_t at = side % 2 == 0 ? i : kRagged.size() - 1 - i;
      const double scale = side < 2 ? 1 : 0.45;
      const double y = std::max(0.04, kRagged[at] * scale) * high;
      edge.push_back({-wide / 2 + step * (static_cast<double>(i) + 1), y});
      edge.push_back({-wide / 2 + step * static_cast<double>(i), y});
    }
    Mesh wall = slabMesh(edge, thick);
    append(mesh, turned(placed(std::move(wall), {0, 0, -(wide - thick) / 2}, 0), 90.0 * side),
           {0, base, 0});
  }
}

/// A belt of stone around a square tower.
void addBelt(Mesh& mesh, double wide, double out, double thick, double y) {
  append(mesh, box(wide + 2 * out, thick, wide + 2 * out), {0, y, 0});
}

}  // namespace

Mesh towerMesh(const std::array<double, 3>& size, bool broken) {
  const double w = std::min(size[0], size[2]), h = size[1], thick = 0.14 * w;
  const double roof = broken ? 0 : 0.2 * h, body = h - roof;
  const double belfry = std::min(1.35 * w, 0.36 * body), ragged = broken ? 0.42 * belfry : 0;
  const double shaft = body - belfry;
  Mesh mesh;
  addBelt(mesh, w, 0.07 * w, std::min(0.28 * w, 0.2 * shaft), 0);  // plinth
  append(mesh, box(w, shaft, w));
  const int stages = std::clamp(static_cast<int>(shaft / (1.5 * w)), 1, 12);
  for (int i = 1; i <= stages; ++i)
    addBelt(mesh, w, 0.035 * w, 0.05 * w, shaft * i / stages - 0.05 * w);
  const Mesh slit = box(0.09 * w, 0.36 * w, 1.012 * w);
  for (int i = 0; i < stages; ++i)
    for (const double heading : {0.0, 90.0})
      append(mesh, turned(slit, heading), {0, shaft * (i + 0.42) / stages, 0});
  const Opening arch{
      .width = 0.42 * w, .sill = 0.12 * belfry, .height = 0.66 * belfry, .arched = true};
  const double whole = belfry - ragged;
  Opening fits = arch;
  fits.height = std::min(arch.height, 0.9 * whole - arch.sill);
  addFourWalls(mesh, w, whole, thick, fits, shaft);
  if (broken) {
    addRaggedTop(mesh, w, thick, ragged, body - ragged);
    return mesh;
  }
  addBelt(mesh, w, 0.03 * w, 0.04 * w, body - 0.14 * w);
  addBelt(mesh, w, 0.08 * w, 0.09 * w, body - 0.09 * w);  // cornice
  append(mesh, pyramidMesh({1.02 * w, roof, 1.02 * w}), {0, body, 0});
  return mesh;
}

}  // namespace tw
