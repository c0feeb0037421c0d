// Filling triangles with a depth buffer.
//
// Idea: bring each point to camera space once; cut each triangle at the near plane (Sutherland and
// Hodgman 1974, one plane); project; walk the pixels of its bounding box and keep those whose
// centre lies inside by the signs of three edge functions (Pineda 1988). 1/depth is linear on the
// picture, so it is what is interpolated and compared; the light is interpolated flatly, which at
// the size of a figure's triangles is not seen.
//
// Steps:  1 points and light to camera space   2 near cut   3 projection
//         4 per row: the span of covered pixels, then fill where nearer than what is there. What is
//           linear over a triangle is worked out at its first pixel: many triangles have none.
// Cost: the points, plus about two nanoseconds per covered pixel.
// Does badly: no smoothing of edges (the contours, not the pixels, are drawn); light on triangles
// that are large and seen steeply bends a little.
#include "stage/rasterise.h"

#include <Eigen/Geometry>
#include <algorithm>
#include <cmath>
#include <limits>

namespace tw {

namespace {

constexpr int kNarrowPx = 8;

struct Corner {
  Vec3 at;  ///< camera space
  double light = 0, others = 0;
};

struct Pixel {
  double x = 0, y = 0;
  double invDepth = 0;
  double light = 0, others = 0;
};

/// A value that is linear on the picture: value(x, y) = base + x·dx + y·dy.
struct Plane {
  double base = 0, dx = 0, dy = 0;
  double at(double x, double y) const { return base + x * dx + y * dy; }
};

struct Target {
  Picture& picture;
  const Viewport& view;
  std::int16_t solid;
  std::uint8_t part;
  std::vector<float>* others;  ///< light of other lamps, or nothing to be told of it
  bool onlyDepth = false;      ///< neither part nor light
};

Plane planeThrough(const Pixel& a, const Pixel& b, const Pixel& c, double va, double vb, double vc,
                   double inverseArea) {
  Plane p;
  p.dx = ((vb - va) * (c.y - a.y) - (vc - va) * (b.y - a.y)) * inverseArea;
  p.dy = ((vc - va) * (b.x - a.x) - (vb - va) * (c.x - a.x)) * inverseArea;
  p.base = va - p.dx * a.x - p.dy * a.y;
  return p;
}

/// The pixels of one row inside the triangle: [first, last], empty when first > last.
struct Span {
  int first, last;
};

/// An edge function e(x, y) = e.base + x·e.dx + y·e.dy ≥ 0 inside.
void narrow(Span& span, const Plane& edge, double y) {
  const double atZero = edge.base + y * edge.dy;
  if (edge.dx > 0)
    span.first =
        std::max(span.first, static_cast<int>(std::ceil(std::max(-1e9, -atZero / edge.dx) - 0.5)));
  else if (edge.dx < 0)
    span.last =
        std::min(span.last, static_cast<int>(std::floor(std::min(1e9, -atZero / edge.dx) - 0.5)));
  else if (atZero < 0)
    span.last = span.first - 1;
}

/// Twice the area, with a sign for the turn.
double areaOf(const Pixel& a, const Pixel& b, const Pixel& c) {
  return (b.x - a.x) * (c.y - a.y) - (c.x - a.x) * (b.y - a.y);
}

/// Fills pixels of one triangle.
class Filling {
 public:
  Filling(const Target& target, const Pixel& a, const Pixel& b, const Pixel& c)
      : target_(target), a_(a), b_(b), c_(c) {}

  void at(int x, int row) {
    if (!depthKnown_) {
      inverse_ = plane(a_.invDepth, b_.invDepth, c_.invDepth);
      depthKnown_ = true;
    }
    const double px = x + 0.5, py = row + 0.5, inverseDepth = inverse_.at(px, py);
    const std::size_t i =
        static_cast<std::size_t>(row) * target_.view.width + static_cast<std::size_t>(x);
    if (!(inverseDepth * target_.picture.depth[i] > 1)) return;  // farther than what is there
    target_.picture.depth[i] = static_cast<float>(1 / inverseDepth);
    target_.picture.solid[i] = target_.solid;
    if (target_.onlyDepth) return;
    if (!lightKnown_) findLight();
    target_.picture.part[i] = target_.part;
    target_.picture.light[i] = std::clamp(static_cast<float>(light_.at(px, py)), 0.f, 1.f);
    if (target_.others)
      (*target_.others)[i] = std::max(0.f, static_cast<float>(others_.at(px, py)));
  }

 private:
  Plane plane(double va, double vb, double vc) const {
    return planeThrough(a_, b_, c_, va, vb, vc, 1 / areaOf(a_, b_, c_));
  }
  void findLight() {
    light_ = plane(a_.light, b_.light, c_.light);
    if (target_.others) others_ = plane(a_.others, b_.others, c_.others);
    lightKnown_ = true;
  }

  const Target& target_;
  const Pixel &a_, &b_, &c_;
  bool depthKnown_ = false, lightKnown_ = false;
  Plane inverse_, light_, others_;
};

Plane edgeBetween(const Pixel& from, const Pixel& to, double turn) {
  Plane e;
  e.dx = -(to.y - from.y) * turn;
  e.dy = (to.x - from.x) * turn;
  e.base = -(e.dx * from.x + e.dy * from.y);
  return e;
}

int clampToInt(double v, int low, int high) {
  return static_cast<int>(std::clamp(v, static_cast<double>(low), static_cast<double>(high)));
}

/// Calls use(column, row) for each pixel whose centre lies in the triangle.
template <class Use>
void eachPixel(const Viewport& view, const Pixel& a, const Pixel& b, const Pixel& c, Use use) {
  const double area = areaOf(a, b, c);
  if (area == 0) return;
  const double turn = area > 0 ? 1 : -1;
  const int top = clampToInt(std::ceil(std::min({a.y, b.y, c.y}) - 0.5), 0, view.height);
  const int bottom = clampToInt(std::floor(std::max({a.y, b.y, c.y}) - 0.5), -1, view.height - 1);
  const int left = clampToInt(std::ceil(std::min({a.x, b.x, c.x}) - 0.5), 0, view.width);
  const int right = clampToInt(std::floor(std::max({a.x, b.x, c.x}) - 0.5), -1, view.width - 1);
  if (top > bottom || left > right) return;
  const Plane ab = edgeBetween(a, b, turn), bc = edgeBetween(b, c, turn),
              ca = edgeBetween(c, a, turn);
  // Most triangles of a body are a few pixels wide: testing each pixel beats finding the span.
  const bool narrowOne = right - left < kNarrowPx;
  for (int row = top; row <= bottom; ++row) {
    const double y = row + 0.5;
    if (narrowOne) {
      const double onAb = ab.base + y * ab.dy, onBc = bc.base + y * bc.dy,
                   onCa = ca.base + y * ca.dy;
      for (int x = left; x <= right; ++x) {
        const double px = x + 0.5;
        if (onAb + px * ab.dx < 0 || onBc + px * bc.dx < 0 || onCa + px * ca.dx < 0) continue;
        use(x, row);
      }
      continue;
    }
    Span span{left, right};
    for (const Plane* edge : {&ab, &bc, &ca}) narrow(span, *edge, y);
    for (int x = span.first; x <= span.last; ++x) use(x, row);
  }
}

void fillTriangle(const Target& target, const Pixel& a, const Pixel& b, const Pixel& c) {
  Filling filling(target, a, b, c);
  eachPixel(target.view, a, b, c, [&](int x, int row) { filling.at(x, row); });
}

Pixel projected(const Corner& corner, const Eigen::Matrix3d& k, const Viewport& view) {
  const Vec3 p = k * corner.at;
  return {(p.x() / p.z() - view.corner.x) * view.pxPerWidth,
          (p.y() / p.z() - view.corner.y) * view.pxPerWidth, 1 / p.z(), corner.light,
          corner.others};
}

Corner cutBetween(const Corner& a, const Corner& b) {
  const double t = (kNearM - a.at.z()) / (b.at.z() - a.at.z());
  return {a.at + t * (b.at - a.at), a.light + t * (b.light - a.light),
          a.others + t * (b.others - a.others)};
}

/// The part of the triangle beyond the near plane: 0, 3 or 4 corners.
int cutAtNearPlane(const std::array<Corner, 3>& in, std::array<Corner, 4>& out) {
  int count = 0;
  for (std::size_t i = 0; i < 3; ++i) {
    const Corner &a = in[i], &b = in[(i + 1) % 3];
    const bool aIn = a.at.z() >= kNearM, bIn = b.at.z() >= kNearM;
    if (aIn) out[static_cast<std::size_t>(count++)] = a;
    if (aIn != bIn) out[static_cast<std::size_t>(count++)] = cutBetween(a, b);
  }
  return count;
}

bool facesAway(const Mesh& mesh, const std::array<std::uint32_t, 3>& t, const Vec3& eye) {
  const Vec3& a = mesh.points[t[0]];
  return (mesh.points[t[1]] - a).cross(mesh.points[t[2]] - a).dot(eye - a) < 0;
}

/// Calls use(a, b, c, index) for each triangle before the lens whose face is asked for; `corners`
/// in camera space, one per point.
template <class Use>
void eachTriangle(const Mesh& mesh, const std::vector<Corner>& corners, Faces faces,
                  const Camera& camera, const Viewport& view, Use use) {
  std::vector<Pixel> pixels(corners.size());
  for (std::size_t i = 0; i < corners.size(); ++i)
    if (corners[i].at.z() >= kNearM) pixels[i] = projected(corners[i], camera.intrinsics(), view);
  for (std::size_t i = 0; i < mesh.triangles.size(); ++i) {
    const auto& t = mesh.triangles[i];
    if (faces != Faces::All && facesAway(mesh, t, camera.eye()) == (faces == Faces::TowardEye))
      continue;
    if (std::min({corners[t[0]].at.z(), corners[t[1]].at.z(), corners[t[2]].at.z()}) >= kNearM) {
      use(pixels[t[0]], pixels[t[1]], pixels[t[2]], i);
      continue;
    }
    std::array<Corner, 4> cut;
    const int count = cutAtNearPlane({corners[t[0]], corners[t[1]], corners[t[2]]}, cut);
    if (count == 0) continue;
    std::array<Pixel, 4> seen;
    for (std::size_t j = 0; j < static_cast<std::size_t>(count); ++j)
      seen[j] = projected(cut[j], camera.intrinsics(), view);
    use(seen[0], seen[1], seen[2], i);
    if (count == 4) use(seen[0], seen[2], seen[3], i);
  }
}

void fillMesh(const Mesh& mesh, const std::vector<Corner>& corners, Faces faces,
              const Camera& camera, Target target) {
  eachTriangle(mesh, corners, faces, camera, target.view,
               [&](const Pixel& a, const Pixel& b, const Pixel& c, std::size_t triangle) {
                 target.part = mesh.part[triangle];
                 fillTriangle(target, a, b, c);
               });
}

/// Bodies are closed and wound outward, so what faces away is always covered. Props may be open.
Faces facesOf(const Solid& solid) {
  return solid.figure >= 0 ? Faces::TowardEye : Faces::All;
}

std::vector<Corner> unlitCorners(const Mesh& mesh, const Camera& camera) {
  std::vector<Corner> corners(mesh.points.size());
  for (std::size_t i = 0; i < corners.size(); ++i)
    corners[i].at = camera.cameraFromWorld(mesh.points[i]);
  return corners;
}

}  // namespace

Viewport frameViewport(const Camera& camera, int width) {
  return {{0, 0},
          static_cast<double>(width),
          width,
          std::max(1, static_cast<int>(std::lround(width / camera.aspect())))};
}

Picture blankDepths(const Viewport& view) {
  Picture picture;
  picture.width = view.width;
  picture.height = view.height;
  const std::size_t n =
      static_cast<std::size_t>(view.width) * static_cast<std::size_t>(view.height);
  picture.solid.assign(n, -1);
  picture.depth.assign(n, std::numeric_limits<float>::infinity());
  return picture;
}

Picture blankPicture(const Viewport& view) {
  Picture picture = blankDepths(view);
  picture.part.assign(picture.solid.size(), 0);
  picture.light.assign(picture.solid.size(), 0);
  return picture;
}

void rasterise(const Solid& solid, int index, const Camera& camera, const Viewport& view,
               const Vec3& towardLight, Picture& picture) {
  rasterise(solid.mesh, solid.mesh.normals, facesOf(solid), index, camera, view, towardLight,
            picture);
}

void rasterise(const Mesh& mesh, const std::vector<Vec3>& normals, Faces faces, int index,
               const Camera& camera, const Viewport& view, const Vec3& towardLight,
               Picture& picture) {
  const Vec3 light = towardLight.normalized();
  std::vector<Corner> corners(mesh.points.size());
  for (std::size_t i = 0; i < corners.size(); ++i)
    corners[i] = {camera.cameraFromWorld(mesh.points[i]), normals[i].dot(light)};
  fillMesh(mesh, corners, faces, camera,
           {picture, view, static_cast<std::int16_t>(index), 0, nullptr});
}

void rasterise(const Mesh& mesh, const PointLight& light, Faces faces, int index,
               const Camera& camera, const Viewport& view, Picture& picture,
               std::vector<float>& others) {
  std::vector<Corner> corners(mesh.points.size());
  for (std::size_t i = 0; i < corners.size(); ++i)
    corners[i] = {camera.cameraFromWorld(mesh.points[i]), light.key[i], light.others[i]};
  fillMesh(mesh, corners, faces, camera,
           {picture, view, static_cast<std::int16_t>(index), 0, &others});
}

void rasteriseDepth(const Mesh& mesh, Faces faces, const Camera& camera, const Viewport& view,
                    Picture& picture) {
  fillMesh(mesh, unlitCorners(mesh, camera), faces, camera, {picture, view, 0, 0, nullptr, true});
}

void markParts(const Solid& solid, const Camera& camera, const Viewport& view,
               const PartMarks& marks, std::vector<std::uint16_t>& pixels) {
  eachTriangle(
      solid.mesh, unlitCorners(solid.mesh, camera), facesOf(solid), camera, view,
      [&](const Pixel& a, const Pixel& b, const Pixel& c, std::size_t triangle) {
        const std::uint16_t mark = marks[solid.mesh.part[triangle]];
        eachPixel(view, a, b, c, [&](int x, int row) {
          pixels[static_cast<std::size_t>(row) * view.width + static_cast<std::size_t>(x)] |= mark;
        });
      });
}

}  // namespace tw
