// Draws on another surface in non-photo blue alone: black becomes the full blue, greys paler ones.
// For a rough that is pencilled over and must vanish in the scan.
#pragma once

#include "press/grid_art.h"
#include "press/reinked_surface.h"

namespace tw {

class BlueSurface final : public ReinkedSurface {
 public:
  explicit BlueSurface(Surface& under) : ReinkedSurface(under) {}

 private:
  Ink of(Ink ink) const override {
    const double paper = 0.30 * ink.red + 0.59 * ink.green + 0.11 * ink.blue;
    const auto one = [paper](double full) { return full + paper * (1 - full); };
    return {one(kNonPhotoBlue.red), one(kNonPhotoBlue.green), one(kNonPhotoBlue.blue)};
  }
};

}  // namespace tw
