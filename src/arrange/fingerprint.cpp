// A key for layouts that are the same in geometry and order. Trees that differ can draw the same
// page: the 2 × 2 grid is tiers of columns and columns of tiers, so the search asks for it.
#include <algorithm>
#include <cmath>
#include <cstdint>

#include "arrange/layout.h"

namespace tw {

namespace {

constexpr double kGrid = 0.5;  // mm, of fingerprints
// Corners often fall on round numbers, so the grid is moved off them by an odd amount.
constexpr double kGridShift = 0.1377;

/// 64-bit FNV-1a: Fowler, Noll, Vo; constants as in the IETF draft, from memory.
class Fingerprint {
 public:
  void add(std::uint64_t value) {
    for (int byte = 0; byte < 8; ++byte, value >>= 8)
      sum_ = (sum_ ^ (value & 0xFF)) * 0x100000001B3u;
  }
  std::uint64_t sum() const { return sum_; }

 private:
  std::uint64_t sum_ = 0xCBF29CE484222325u;
};

using GridPoint = std::pair<long, long>;

/// Corners on the grid, sorted: enough to tell convex outlines apart.
std::vector<GridPoint> gridCorners(const Polygon& outline) {
  std::vector<GridPoint> corners;
  for (const Point p : outline.points)
    corners.emplace_back(std::lround((p.x + kGridShift) / kGrid),
                         std::lround((p.y + kGridShift) / kGrid));
  std::sort(corners.begin(), corners.end());
  corners.erase(std::unique(corners.begin(), corners.end()), corners.end());
  return corners;
}

}  // namespace

std::uint64_t fingerprint(const Layout& layout) {
  Fingerprint print;
  for (const LayoutPanel& panel : layout.panels) {
    const std::vector<GridPoint> corners = gridCorners(panel.outline);
    print.add(corners.size());
    print.add(panel.ground ? 1 : 0);
    for (const auto& [x, y] : corners) {
      print.add(static_cast<std::uint64_t>(x));
      print.add(static_cast<std::uint64_t>(y));
    }
  }
  return print.sum();
}

}  // namespace tw
