// Fills triangles into a picture with a depth buffer: who is seen at each pixel, which part, how
// far away and how lit. Double set-up and float filling in a fixed order, so the same scene gives
// the same bytes. It knows no drawing; render() and visibleShares() stand on it.
#pragma once

#include <array>
#include <cstdint>
#include <vector>

#include "stage/picture.h"

namespace tw {

/// Where the picture's pixels lie on the camera's frame: pixel = (place − corner) · pxPerWidth.
struct Viewport {
  Point corner;  ///< of the picture on the frame, frame units
  double pxPerWidth = 0;
  int width = 0, height = 0;
};

/// The frame itself at that width.
Viewport frameViewport(const Camera& camera, int width);

/// Around all of the mesh that lies before the lens, on the pixel grid of a frame of that many
/// pixels a width, with a pixel to spare; of size 0 when nothing does.
Viewport viewportAround(const Mesh& mesh, const Camera& camera, double pxPerWidth);
/// The same at that width of the frame, or coarser where it would become too large.
Viewport aloneViewport(const Mesh& mesh, const Camera& camera, int width);

/// An empty picture of the viewport's size.
Picture blankPicture(const Viewport& view);

/// Pixels of the solid alone, beyond the frame too, in those of a frame of that width.
double pixelsAlone(const Solid& solid, const Camera& camera, int width);

/// Adds the solid, marked with `index`. What lies nearer than kNearM is cut off.
void rasterise(const Solid& solid, int index, const Camera& camera, const Viewport& view,
               const Vec3& towardLight, Picture& picture);

enum class Faces { All, TowardEye, FromEye };

/// The same for a bare mesh, shaded by other normals than its own. Faces turned away from the eye,
/// or toward it, are left out when asked: right for closed meshes that are wound outward.
void rasterise(const Mesh& mesh, const std::vector<Vec3>& normals, Faces faces, int index,
               const Camera& camera, const Viewport& view, const Vec3& towardLight,
               Picture& picture);

/// Light per point of the mesh: the key's, which goes into the picture's own, and that of all other
/// lamps together.
struct PointLight {
  std::vector<float> key, others;
};
/// The same by light that is known already; `others` has a number per pixel, for what is seen.
void rasterise(const Mesh& mesh, const PointLight& light, Faces faces, int index,
               const Camera& camera, const Viewport& view, Picture& picture,
               std::vector<float>& others);

/// For shadows: an empty picture without parts and light, and filling it with solid 0 and depths.
Picture blankDepths(const Viewport& view);
void rasteriseDepth(const Mesh& mesh, Faces faces, const Camera& camera, const Viewport& view,
                    Picture& picture);

/// Bits by which parts are told apart.
using PartMarks = std::array<std::uint16_t, 256>;
/// Adds its mark to each pixel that a part of the solid covers, nearer ones not before it.
void markParts(const Solid& solid, const Camera& camera, const Viewport& view,
               const PartMarks& marks, std::vector<std::uint16_t>& pixels);

/// A lens cannot come closer than this; also keeps the division by depth tame.
inline constexpr double kNearM = 0.05;

}  // namespace tw
