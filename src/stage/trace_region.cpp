#include "stage/trace_region.h"

#include <array>

#include "geometry/polygon.h"

namespace tw {
namespace {

// Directions of a step along pixel edges with the inside on the right hand: →, ↓, ←, ↑.
constexpr std::array<int, 4> kDx{1, 0, -1, 0};
constexpr std::array<int, 4> kDy{0, 1, 0, -1};

class Tracer {
 public:
  Tracer(const std::vector<std::uint8_t>& mask, int width, int height)
      : mask_(mask), width_(width), height_(height) {
    out_.assign(static_cast<std::size_t>((width + 1) * (height + 1)), 0);
    for (int y = 0; y < height; ++y) {
      for (int x = 0; x < width; ++x) addEdges(x, y);
    }
  }

  Region run(double leastPixels, double tolerance) {
    Region region;
    for (int y = 0; y <= height_; ++y) {
      for (int x = 0; x <= width_; ++x) {
        while (out(x, y) != 0) {
          Polygon loop = follow(x, y);
          if (area(loop) < leastPixels) continue;
          loop.points = simplified(loop.points, tolerance);
          loop.points.pop_back();
          if (loop.points.size() > 2) region.push_back(std::move(loop));
        }
      }
    }
    return region;
  }

 private:
  bool in(int x, int y) const {
    return x >= 0 && y >= 0 && x < width_ && y < height_ &&
           mask_[static_cast<std::size_t>(y * width_ + x)] != 0;
  }
  std::uint8_t& out(int x, int y) { return out_[static_cast<std::size_t>(y * (width_ + 1) + x)]; }

  void addEdges(int x, int y) {
    if (!in(x, y)) return;
    if (!in(x, y - 1)) out(x, y) |= 1;
    if (!in(x + 1, y)) out(x + 1, y) |= 2;
    if (!in(x, y + 1)) out(x + 1, y + 1) |= 4;
    if (!in(x - 1, y)) out(x, y + 1) |= 8;
  }

  /// At a corner where two pixels touch only diagonally the right turn is taken, which keeps them
  /// two loops.
  int nextDirection(int x, int y, int came) {
    for (const int turn : {1, 0, 3}) {
      const int d = (came + turn) % 4;
      if (out(x, y) & (1 << d)) return d;
    }
    return -1;
  }

  Polygon follow(int startX, int startY) {
    Polygon loop;
    int x = startX, y = startY, d = 0;
    while (!(out(x, y) & (1 << d))) ++d;
    do {
      out(x, y) &= static_cast<std::uint8_t>(~(1 << d));
      loop.points.push_back({static_cast<double>(x), static_cast<double>(y)});
      x += kDx[static_cast<std::size_t>(d)];
      y += kDy[static_cast<std::size_t>(d)];
      d = nextDirection(x, y, d);
    } while (d >= 0 && !(x == startX && y == startY));
    loop.points.push_back({static_cast<double>(startX), static_cast<double>(startY)});
    return loop;
  }

  const std::vector<std::uint8_t>& mask_;
  int width_, height_;
  std::vector<std::uint8_t> out_;  // directions leaving each pixel corner, one bit each
};

}  // namespace

Region traced(const std::vector<std::uint8_t>& mask, int width, int height, double leastPixels,
              double tolerance) {
  return Tracer(mask, width, height).run(leastPixels, tolerance);
}

}  // namespace tw
