// Shadows.
//
// Words: the map is a depth picture from the lamp; a place is shaded when the map holds something
// nearer to the lamp (L. Williams 1978, doi:10.1145/965139.807402).
//
//  1 The lamp is a camera half a kilometre away, its frame laid around figures and props.
//  2 Of bodies only the faces turned away from the lamp go into the map: these lie inside or behind
//    what they shade, so a lit surface never shades itself by rounding.
//  3 The four map pixels around a place vote by nearness (percentage closer filtering, W. Reeves et
//    al. 1987, doi:10.1145/37402.37435), which keeps edges smooth in close-ups.
//  4 A picture's pixel is brought to the lamp's space by one linear map in (x, y, depth).
//  5 Ground: every point moves along the light to height 0 and the flat things are filled.
// Cost: one render of the bodies plus a look-up per lit pixel; the ground half a render more.
// Does badly: the map's pixels are 5 to 10 mm wide, so a finger's shadow is a stump; props that are
// not closed may shade themselves within 3 cm.
#include "stage/shadow_map.h"

#include <Eigen/Geometry>
#include <Eigen/LU>
#include <algorithm>
#include <cmath>
#include <limits>

#include "stage/rasterise.h"

namespace tw {

namespace {

constexpr double kLampM = 500;    // so far away that its rays are as good as parallel
constexpr double kBodyM = 0.014;  // nearer than this a body does not shade itself
constexpr double kPropM = 0.03;
constexpr double kHighestCastM = 1.2;  // what floats higher casts no shadow worth drawing
constexpr double kLowestLamp = 0.2;    // sine of the elevation under which shadows never end
constexpr double kContactM = 0.045;
constexpr float kBeforeGroundM = 0.02f;

/// Right, down and onward of a camera that looks from the lamp.
Eigen::Matrix3d lampAxes(const Vec3& toward) {
  const Vec3 onward = -toward.normalized();
  const Vec3 hint = std::abs(onward.y()) < 0.95 ? Vec3::UnitY() : Vec3::UnitZ();
  const Vec3 right = hint.cross(onward).normalized();
  Eigen::Matrix3d r;
  r.row(0) = right;
  r.row(1) = onward.cross(right);
  r.row(2) = onward;
  return r;
}

struct Extent {
  Vec3 low = Vec3::Constant(std::numeric_limits<double>::infinity());
  Vec3 high = -low;
  void add(const Vec3& p) {
    low = low.cwiseMin(p);
    high = high.cwiseMax(p);
  }
};

double lowestOf(const Mesh& mesh) {
  double lowest = std::numeric_limits<double>::infinity();
  for (const Vec3& p : mesh.points) lowest = std::min(lowest, p.y());
  return lowest;
}

/// Where the half-sized picture of the ground shows it and the full picture nothing before it.
Field seenOnGround(const Picture& flat, const std::vector<Solid>& solids, const Picture& picture) {
  return fieldOf(flat, windowsOf(flat, 1)[0], [&](std::size_t i) {
    if (flat.solid[i] < 0) return 0.f;
    const auto w = static_cast<std::size_t>(flat.width);
    const std::size_t x = std::min<std::size_t>(2 * (i % w), picture.width - 1),
                      y = std::min<std::size_t>(2 * (i / w), picture.height - 1),
                      here = y * static_cast<std::size_t>(picture.width) + x;
    const std::int16_t who = picture.solid[here];
    const bool ground = who < 0 || solids[static_cast<std::size_t>(who)].isSet;
    return ground && picture.depth[here] > flat.depth[i] - kBeforeGroundM ? 1.f : 0.f;
  });
}

/// The frame at half the picture's width: a shadow's edge is soft anyway.
Viewport halfOf(const Camera& camera, const Picture& picture) {
  return frameViewport(camera, std::max(1, picture.width / 2));
}

}  // namespace

Vec3 onGround(const Vec3& place, const Vec3& towardLamp) {
  return place - towardLamp * (std::max(0.0, place.y()) / towardLamp.y());
}

ShadowMap::ShadowMap(const std::vector<Solid>& solids, const Vec3& towardLamp, int width) {
  const Eigen::Matrix3d r = lampAxes(towardLamp);
  Extent all;
  for (const Solid& solid : solids)
    if (!solid.isSet)
      for (const Vec3& p : solid.mesh.points) all.add(r * p);
  if (!(all.high.x() > all.low.x())) return;
  const double side = 1.02 * std::max(all.high.x() - all.low.x(), all.high.y() - all.low.y());
  Eigen::Matrix3d k = Eigen::Matrix3d::Identity();
  k(0, 0) = k(1, 1) = kLampM / side;
  k(0, 2) = k(1, 2) = 0.5;
  const Vec3 middle = (all.low + all.high) / 2;
  lamp_.emplace(k, r, Vec3(-middle + Vec3(0, 0, kLampM)));
  const Viewport view{{0, 0}, static_cast<double>(width), width, width};
  seen_ = blankDepths(view);
  for (const Solid& solid : solids) {
    if (solid.isSet) continue;
    const Faces faces = solid.figure >= 0 ? Faces::FromEye : Faces::All;
    rasteriseDepth(solid.mesh, faces, *lamp_, view, seen_);
  }
}

double ShadowMap::shadeAt(const Vec3& p, double leastM) const {
  const double scale = lamp_->intrinsics()(0, 0) * seen_.width / p.z();
  const double x = p.x() * scale + 0.5 * seen_.width - 0.5,
               y = p.y() * scale + 0.5 * seen_.width - 0.5;
  if (!(x >= 0 && y >= 0 && x < seen_.width - 1 && y < seen_.width - 1)) return 0;
  const auto column = static_cast<std::size_t>(x), row = static_cast<std::size_t>(y);
  const double fx = x - static_cast<double>(column), fy = y - static_cast<double>(row);
  const float* upper = &seen_.depth[row * static_cast<std::size_t>(seen_.width) + column];
  const float* lower = upper + seen_.width;
  const auto least = static_cast<float>(p.z() - leastM);
  const auto shade = [&](const float* pair) {
    return (pair[0] < least ? 1 - fx : 0) + (pair[1] < least ? fx : 0);
  };
  return (1 - fy) * shade(upper) + fy * shade(lower);
}

bool ShadowMap::isShaded(const Vec3& place, double leastM) const {
  return lamp_ && shadeAt(lamp_->cameraFromWorld(place), leastM) > 0.5;
}

void ShadowMap::darken(const std::vector<Solid>& solids, const Camera& camera,
                       Picture& picture) const {
  if (!lamp_) return;
  // lamp = origin + depth · (direction at pixel 0, 0 + x · perX + y · perY)
  const Eigen::Matrix3d rays =
      lamp_->rotation() * camera.rotation().transpose() * camera.intrinsics().inverse();
  const Vec3 origin = lamp_->cameraFromWorld(camera.eye());
  const Vec3 perX = rays.col(0) / picture.width, perY = rays.col(1) / picture.width;
  std::size_t i = 0;
  for (int row = 0; row < picture.height; ++row) {
    Vec3 ray = rays.col(2) + perY * (row + 0.5) + perX * 0.5;
    for (int x = 0; x < picture.width; ++x, ++i, ray += perX) {
      if (picture.solid[i] < 0 || picture.light[i] <= 0) continue;
      const bool body = solids[static_cast<std::size_t>(picture.solid[i])].figure >= 0;
      const Vec3 place = origin + ray * static_cast<double>(picture.depth[i]);
      picture.light[i] *= static_cast<float>(1 - shadeAt(place, body ? kBodyM : kPropM));
    }
  }
}

Field groundShadow(const std::vector<Solid>& solids, const Camera& camera, const Vec3& towardLamp,
                   const Picture& picture) {
  const Viewport view = halfOf(camera, picture);
  Picture flat = blankDepths(view);
  if (camera.eye().y() > 0 && towardLamp.y() >= kLowestLamp)
    for (const Solid& solid : solids) {
      if (solid.isSet || lowestOf(solid.mesh) >= kHighestCastM) continue;
      Mesh pressed;
      pressed.triangles = solid.mesh.triangles;
      pressed.part = solid.mesh.part;
      pressed.points.reserve(solid.mesh.points.size());
      for (const Vec3& p : solid.mesh.points) pressed.points.push_back(onGround(p, towardLamp));
      rasteriseDepth(pressed, Faces::All, camera, view, flat);
    }
  return seenOnGround(flat, solids, picture);
}

Field contactShadow(const std::vector<Solid>& solids, const Camera& camera,
                    const Picture& picture) {
  const Viewport view = halfOf(camera, picture);
  Picture flat = blankDepths(view);
  if (camera.eye().y() > 0)
    for (const Solid& solid : solids) {
      if (solid.isSet || lowestOf(solid.mesh) >= kContactM) continue;
      Mesh low;
      low.points = solid.mesh.points;
      for (Vec3& p : low.points) p.y() = std::min(p.y(), 0.0);
      for (std::size_t i = 0; i < solid.mesh.triangles.size(); ++i) {
        const auto& t = solid.mesh.triangles[i];
        if (std::min({solid.mesh.points[t[0]].y(), solid.mesh.points[t[1]].y(),
                      solid.mesh.points[t[2]].y()}) > kContactM)
          continue;
        low.triangles.push_back(t);
        low.part.push_back(0);
      }
      rasteriseDepth(low, Faces::All, camera, view, flat);
    }
  return seenOnGround(flat, solids, picture);
}

}  // namespace tw
