#include <algorithm>
#include <cmath>

#include "stage/picture.h"
#include "stage/rasterise.h"

namespace tw {

namespace {

// A thing is counted alone at no more than this many pixels across, however far it goes beyond
// the frame; the count is scaled to the picture's pixels.
constexpr int kMostAlonePx = 480;
// What lies farther out than this many frame widths is not part of any picture we could aim at.
constexpr double kMostFrames = 8;

/// Around all of the mesh that lies before the near plane, frame units; empty when nothing does.
Rect imageBounds(const Mesh& mesh, const Camera& camera) {
  Rect box{{kMostFrames, kMostFrames}, {-kMostFrames, -kMostFrames}};
  for (const Vec3& point : mesh.points) {
    if (camera.depth(point) < kNearM) continue;
    const Point p = camera.projectAlways(point);
    box.min = {std::min(box.min.x, p.x), std::min(box.min.y, p.y)};
    box.max = {std::max(box.max.x, p.x), std::max(box.max.y, p.y)};
  }
  box.min = {std::max(box.min.x, -kMostFrames), std::max(box.min.y, -kMostFrames)};
  box.max = {std::min(box.max.x, kMostFrames), std::min(box.max.y, kMostFrames)};
  return box;
}

Viewport viewportOf(const Rect& box, double scale) {
  if (!(std::max(box.width(), box.height()) > 0)) return {};
  const Point corner{std::floor(box.min.x * scale) / scale, std::floor(box.min.y * scale) / scale};
  return {corner, scale, static_cast<int>(std::ceil((box.max.x - corner.x) * scale)) + 1,
          static_cast<int>(std::ceil((box.max.y - corner.y) * scale)) + 1};
}

std::vector<double> countPixels(const Picture& picture, std::size_t solids) {
  std::vector<double> counts(solids, 0);
  for (const std::int16_t id : picture.solid)
    if (id >= 0) counts[static_cast<std::size_t>(id)] += 1;
  return counts;
}

}  // namespace

Viewport viewportAround(const Mesh& mesh, const Camera& camera, double pxPerWidth) {
  return viewportOf(imageBounds(mesh, camera), pxPerWidth);
}

Viewport aloneViewport(const Mesh& mesh, const Camera& camera, int width) {
  const Rect box = imageBounds(mesh, camera);
  // On the picture's own pixel grid when the scale allows, so that both counts agree exactly.
  const double most = std::max(box.width(), box.height());
  return viewportOf(box, most > 0 ? std::min(static_cast<double>(width), kMostAlonePx / most) : 1);
}

double pixelsAlone(const Solid& solid, const Camera& camera, int width) {
  const Viewport view = aloneViewport(solid.mesh, camera, width);
  if (view.width == 0) return 0;
  Picture alone = blankPicture(view);
  rasterise(solid, 0, camera, view, Vec3::UnitY(), alone);
  const double perPixel = width / view.pxPerWidth;
  return countPixels(alone, 1)[0] * perPixel * perPixel;
}

Picture render(const std::vector<Solid>& solids, const Camera& camera, int width,
               const Vec3& towardLight) {
  const Viewport view = frameViewport(camera, width);
  Picture picture = blankPicture(view);
  for (std::size_t i = 0; i < solids.size(); ++i)
    rasterise(solids[i], static_cast<int>(i), camera, view, towardLight, picture);
  return picture;
}

std::vector<double> visibleShares(const std::vector<Solid>& solids, const Camera& camera,
                                  int width) {
  return visibleShares(render(solids, camera, width), solids, camera, solids.size());
}

std::vector<double> visibleShares(const Picture& picture, const std::vector<Solid>& solids,
                                  const Camera& camera, std::size_t first) {
  std::vector<double> shares = countPixels(picture, solids.size());
  shares.resize(std::min(first, shares.size()));
  for (std::size_t i = 0; i < shares.size(); ++i) {
    const double alone = pixelsAlone(solids[i], camera, picture.width);
    shares[i] = alone > 0 ? std::min(1.0, shares[i] / alone) : 0;
  }
  return shares;
}

}  // namespace tw
