#include "stage/own_mask.h"

#include <tuple>

namespace tw {
namespace {

PartMarks limbMarks(bool isFigure) {
  PartMarks out;
  out.fill(bitOf(Limb::Head));
  for (std::size_t part = 0; isFigure && part < static_cast<std::size_t>(BodyPart::Count); ++part)
    out[part] = bitOf(limbOf(static_cast<BodyPart>(part)));
  return out;
}

}  // namespace

OwnMask::OwnMask(const Solid& solid, const Camera& camera, int width)
    : view_(aloneViewport(solid.mesh, camera, width)) {
  static_assert(static_cast<std::size_t>(BodyPart::Count) <= std::tuple_size_v<PartMarks>);
  bits_.assign(static_cast<std::size_t>(view_.width) * view_.height, 0);
  markParts(solid, camera, view_, limbMarks(solid.figure >= 0), bits_);
  const double perPixel = view_.pxPerWidth > 0 ? width / view_.pxPerWidth : 0;
  for (const LimbBits bits : bits_) {
    if (bits == 0) continue;
    pixels_ += perPixel * perPixel;
    for (std::size_t limb = 0; limb < kLimbs; ++limb)
      if (bits & bitOf(static_cast<Limb>(limb))) limb_[limb] += perPixel * perPixel;
  }
}

LimbBits OwnMask::at(Point place) const {
  const double x = (place.x - view_.corner.x) * view_.pxPerWidth;
  const double y = (place.y - view_.corner.y) * view_.pxPerWidth;
  if (x < 0 || y < 0 || x >= view_.width || y >= view_.height) return 0;
  return at(static_cast<int>(x), static_cast<int>(y));
}

}  // namespace tw
