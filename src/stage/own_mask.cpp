#include "stage/own_mask.h"

#include <algorithm>
#include <cmath>

namespace tw {
namespace {

/// The mesh taken apart into its limbs, none with other points than its own.
PerLimb<Mesh> limbMeshes(const Mesh& mesh) {
  PerLimb<Mesh> out;
  PerLimb<std::vector<std::int32_t>> place;
  for (std::size_t i = 0; i < mesh.triangles.size(); ++i) {
    const auto limb = static_cast<std::size_t>(limbOf(static_cast<BodyPart>(mesh.part[i])));
    Mesh& to = out[limb];
    if (place[limb].empty()) place[limb].assign(mesh.points.size(), -1);
    std::array<std::uint32_t, 3> t = mesh.triangles[i];
    for (std::uint32_t& corner : t) {
      std::int32_t& at = place[limb][corner];
      if (at < 0) {
        at = static_cast<std::int32_t>(to.points.size());
        to.points.push_back(mesh.points[corner]);
        to.normals.push_back(mesh.normals[corner]);
      }
      corner = static_cast<std::uint32_t>(at);
    }
    to.triangles.push_back(t);
    to.part.push_back(mesh.part[i]);
  }
  return out;
}

}  // namespace

OwnMask::OwnMask(const Solid& solid, const Camera& camera, int width)
    : view_(aloneViewport(solid.mesh, camera, width)) {
  bits_.assign(static_cast<std::size_t>(view_.width) * view_.height, 0);
  if (solid.figure < 0) {
    add(solid, Limb::Head, camera);
  } else {
    PerLimb<Mesh> limbs = limbMeshes(solid.mesh);
    Solid part;
    part.figure = solid.figure;
    for (std::size_t limb = 0; limb < kLimbs; ++limb) {
      part.mesh = std::move(limbs[limb]);
      add(part, static_cast<Limb>(limb), camera);
    }
  }
  const double perPixel = view_.pxPerWidth > 0 ? width / view_.pxPerWidth : 0;
  pixels_ *= perPixel * perPixel;
  for (double& pixels : limb_) pixels *= perPixel * perPixel;
}

void OwnMask::add(const Solid& solid, Limb limb, const Camera& camera) {
  const Viewport part = viewportAround(solid.mesh, camera, view_.pxPerWidth);
  if (part.width <= 0 || part.height <= 0) return;
  Picture picture = blankPicture(part);
  rasterise(solid, 0, camera, part, Vec3::UnitY(), picture);
  const int left =
      static_cast<int>(std::lround((part.corner.x - view_.corner.x) * view_.pxPerWidth));
  const int top =
      static_cast<int>(std::lround((part.corner.y - view_.corner.y) * view_.pxPerWidth));
  for (int y = std::max(0, -top); y < part.height && y + top < view_.height; ++y)
    for (int x = std::max(0, -left); x < part.width && x + left < view_.width; ++x) {
      if (picture.solid[static_cast<std::size_t>(y) * part.width + static_cast<std::size_t>(x)] < 0)
        continue;
      LimbBits& bits = bits_[static_cast<std::size_t>(y + top) * view_.width +
                             static_cast<std::size_t>(x + left)];
      pixels_ += bits == 0;
      limb_[static_cast<std::size_t>(limb)] += 1;
      bits |= bitOf(limb);
    }
}

LimbBits OwnMask::at(Point place) const {
  const double x = (place.x - view_.corner.x) * view_.pxPerWidth;
  const double y = (place.y - view_.corner.y) * view_.pxPerWidth;
  if (x < 0 || y < 0 || x >= view_.width || y >= view_.height) return 0;
  return at(static_cast<int>(x), static_cast<int>(y));
}

}  // namespace tw
