#include "read/filled_mask.h"

#include <cmath>
#include <opencv2/imgproc.hpp>

#include "read/with_opencv.h"

namespace tw {

namespace {

/// Farther off the grid than this, in pixels, a corner is moved in; OpenCV counts in 32 bits.
constexpr double kFarPx = 100'000;

}  // namespace

std::vector<std::uint8_t> filledMask(const Region& region, const GreyPicture& grid) {
  const OneThread quiet;
  constexpr int kShift = 8;  // 1/256 px
  const auto pixel = [&](double mm, double origin) {
    const double px = std::clamp((mm - origin) / grid.mmPerPx - 0.5, -kFarPx, kFarPx);
    return static_cast<int>(std::lround(px * (1 << kShift)));
  };
  std::vector<std::vector<cv::Point>> rings;
  for (const Polygon& ring : region) {
    if (ring.points.size() < 3) continue;
    auto& corners = rings.emplace_back();
    for (const Point& p : ring.points)
      corners.emplace_back(pixel(p.x, grid.origin.x), pixel(p.y, grid.origin.y));
  }
  std::vector<std::uint8_t> mask(grid.light.size(), 0);
  cv::Mat out(grid.height, grid.width, CV_8U, mask.data());
  if (!rings.empty()) cv::fillPoly(out, rings, cv::Scalar(255), cv::LINE_8, kShift);
  return mask;
}

}  // namespace tw
