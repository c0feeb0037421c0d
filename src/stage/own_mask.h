// The picture that a figure or a thing would give alone, nothing before it and no frame around it:
// which of its limbs cover each pixel. What the panel shows is compared with it.
#pragma once

#include <vector>

#include "stage/limbs.h"
#include "stage/rasterise.h"

namespace tw {

/// Limbs as bits; things are all of bit 0.
using LimbBits = std::uint16_t;
inline LimbBits bitOf(Limb limb) {
  return static_cast<LimbBits>(1u << static_cast<unsigned>(limb));
}

class OwnMask {
 public:
  /// On the pixels of a frame of that width, or coarser when it would be much larger than that.
  OwnMask(const Solid& solid, const Camera& camera, int width);

  /// Which limbs lie at that place of the frame (frame units), others of its own not before them.
  LimbBits at(Point place) const;
  /// Pixels of the frame's that all of it, or one limb, covers.
  double pixels() const { return pixels_; }
  double pixels(Limb limb) const { return limb_[static_cast<std::size_t>(limb)]; }

  int width() const { return view_.width; }
  int height() const { return view_.height; }
  LimbBits at(int x, int y) const {
    return bits_[static_cast<std::size_t>(y) * view_.width + static_cast<std::size_t>(x)];
  }

 private:
  Viewport view_;
  std::vector<LimbBits> bits_;
  PerLimb<double> limb_{};
  double pixels_ = 0;
};

}  // namespace tw
