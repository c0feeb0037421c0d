#include "geometry/free_rect.h"

#include <algorithm>

namespace tw {

namespace {

/// The sides at which a largest free rectangle can end: those of the space and of what is taken.
std::vector<double> sides(double from, double to, const std::vector<Rect>& taken,
                          double Point::*axis) {
  std::vector<double> out{from, to};
  for (const Rect& r : taken)
    for (double side : {r.min.*axis, r.max.*axis})
      if (side > from && side < to) out.push_back(side);
  std::sort(out.begin(), out.end());
  out.erase(std::unique(out.begin(), out.end()), out.end());
  return out;
}

bool overlaps(const Rect& a, const Rect& b) {
  return a.min.x < b.max.x && b.min.x < a.max.x && a.min.y < b.max.y && b.min.y < a.max.y;
}

}  // namespace

Rect largestFreeRect(const Rect& space, const std::vector<Rect>& taken) {
  const auto xs = sides(space.min.x, space.max.x, taken, &Point::x);
  const auto ys = sides(space.min.y, space.max.y, taken, &Point::y);
  Rect best{space.min, space.min};
  for (std::size_t x0 = 0; x0 < xs.size(); ++x0)
    for (std::size_t x1 = x0 + 1; x1 < xs.size(); ++x1)
      for (std::size_t y0 = 0; y0 < ys.size(); ++y0)
        for (std::size_t y1 = ys.size() - 1; y1 > y0; --y1) {
          const Rect candidate{{xs[x0], ys[y0]}, {xs[x1], ys[y1]}};
          if (candidate.area() <= best.area()) break;  // lower y1 only gets smaller
          if (std::none_of(taken.begin(), taken.end(),
                           [&](const Rect& r) { return overlaps(candidate, r); })) {
            best = candidate;
            break;
          }
        }
  return best;
}

}  // namespace tw
