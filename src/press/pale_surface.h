// Draws on another surface in paler inks, so that what is laid over the drawing is seen first.
#pragma once

#include "press/reinked_surface.h"

namespace tw {

class PaleSurface final : public ReinkedSurface {
 public:
  /// `strength` 1 leaves inks as they are, 0 makes all paper.
  PaleSurface(Surface& under, double strength) : ReinkedSurface(under), strength_(strength) {}

 private:
  Ink of(Ink ink) const override {
    const auto one = [this](double v) { return 1 - strength_ * (1 - v); };
    return {one(ink.red), one(ink.green), one(ink.blue)};
  }

  double strength_;
};

}  // namespace tw
