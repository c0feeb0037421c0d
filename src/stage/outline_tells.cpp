// Solidity = area / hull area, a measure of shape that image processing shares; negative space is
// 1 − it (facts: staging §8, [derived]). A tip is told when more than half of its own pixels lie on
// no other limb's, its neighbour in the chain apart: common practice, no source for the share.
// Cost: one pass over the figure's pixels. Does badly: a hand whose forearm points at the eye
// counts as told though its wrist is not.
#include "stage/outline_tells.h"

#include <algorithm>

#include "geometry/polygon.h"

namespace tw {
namespace {

constexpr double kTipClear = 0.55;

struct Tip {
  Limb tip, next;
};
constexpr std::array<Tip, 5> kTips{{{Limb::Head, Limb::Head},
                                    {Limb::LeftHand, Limb::LeftForearm},
                                    {Limb::RightHand, Limb::RightForearm},
                                    {Limb::LeftFoot, Limb::LeftShank},
                                    {Limb::RightFoot, Limb::RightShank}}};

}  // namespace

OutlineTells outlineTells(const OwnMask& figure) {
  std::vector<Point> corners;
  double pixels = 0;
  std::array<int, kTips.size()> all{}, clear{};
  for (int y = 0; y < figure.height(); ++y) {
    int first = -1, last = -1;
    for (int x = 0; x < figure.width(); ++x) {
      const LimbBits bits = figure.at(x, y);
      if (bits == 0) continue;
      for (std::size_t i = 0; i < kTips.size(); ++i) {
        if (!(bits & bitOf(kTips[i].tip))) continue;
        ++all[i];
        clear[i] += (bits & ~(bitOf(kTips[i].tip) | bitOf(kTips[i].next))) == 0;
      }
      if (first < 0) first = x;
      last = x;
      ++pixels;
    }
    if (first < 0) continue;
    for (const int down : {y, y + 1})
      for (const int across : {first, last + 1})
        corners.push_back({static_cast<double>(across), static_cast<double>(down)});
  }
  OutlineTells out;
  if (corners.size() < 3) return out;
  out.solidity = std::min(1.0, pixels / std::max(1.0, area(hull(std::move(corners)))));
  for (std::size_t i = 0; i < kTips.size(); ++i)
    out.tipsSeen += all[i] > 0 && clear[i] >= kTipClear * all[i];
  return out;
}

}  // namespace tw
