// Figures as bits on a coarse grid over the panel: what room they leave, who hides whom. Made from
// the capsules of volumes.h; no picture is rendered.
#pragma once

#include <array>
#include <cstdint>
#include <vector>

#include "stage/blocking.h"

namespace tw {

inline constexpr int kColumns = 48, kRows = 36;
using Bits = std::array<std::uint64_t, kRows>;  ///< one bit per cell, row by row

/// A slice of a capsule as an ellipse on the picture, panel units.
struct Disc {
  double x = 0, y = 0, rx = 0, ry = 0;
};
struct Discs {
  std::array<Disc, kCapsules * 6> all;
  std::size_t count = 0;
  const Disc* begin() const { return all.data(); }
  const Disc* end() const { return all.data() + count; }
};
/// Those before the camera, in and out of the frame.
Discs discsOf(const Actor& actor, const Camera& camera);

struct Crowd {
  std::vector<Discs> discs;  ///< per figure
  std::vector<Bits> each;
  Bits all{}, before{};  ///< everyone; those nearer than the focus
};
Crowd crowdOf(const Scene& scene, const Camera& camera);

/// Share of the first `rows` rows that nobody covers.
double freeShare(const Bits& bits, int rows);
/// Length of [a, b] inside [0, 1] over its own length.
double shareInside(double a, double b);
/// Share of a figure's silhouette inside the frame and not behind `nearer`. The silhouette is taken
/// on a grid of its own, so that what lies beyond the frame counts as well.
double visibleShare(const Discs& discs, const Bits& nearer);

}  // namespace tw
