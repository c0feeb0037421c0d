// Steps: 1. cut the outline's box out of the page; 2. average it down, never up; 3. draw the
// outline on the same grid, shrunk by the rim; 4. fill what is masked with the mean of the rest, so
// that it neither draws the eye nor hides a contrast. Cost: one pass over the panel's pixels.
#include "read/panel_picture.h"

#include <cmath>
#include <opencv2/imgproc.hpp>

#include "geometry/polygon.h"
#include "read/with_opencv.h"

namespace tw {

namespace {

/// Fewer pixels than this on a side hold no picture.
constexpr int kLeastSide = 8;

cv::Rect pixelsOf(const Rect& box, const GreyPicture& page) {
  const auto pixel = [&](double mm, double origin) { return (mm - origin) / page.mmPerPx; };
  const int left = static_cast<int>(std::floor(pixel(box.min.x, page.origin.x) + 1e-6));
  const int top = static_cast<int>(std::floor(pixel(box.min.y, page.origin.y) + 1e-6));
  const int right = static_cast<int>(std::ceil(pixel(box.max.x, page.origin.x) - 1e-6));
  const int bottom = static_cast<int>(std::ceil(pixel(box.max.y, page.origin.y) - 1e-6));
  return cv::Rect(left, top, right - left, bottom - top) & cv::Rect(0, 0, page.width, page.height);
}

cv::Mat maskOf(const Polygon& outline, const GreyPicture& grid) {
  std::vector<cv::Point> corners;
  constexpr int kShift = 8;  // 1/256 px
  for (const Point& p : outline.points)
    corners.emplace_back(std::lround(((p.x - grid.origin.x) / grid.mmPerPx - 0.5) * (1 << kShift)),
                         std::lround(((p.y - grid.origin.y) / grid.mmPerPx - 0.5) * (1 << kShift)));
  // A rim of its own around the grid, so that the outline is shrunk at the grid's sides too.
  const int rim =
      std::max(1, static_cast<int>(std::lround(kPanelRim * std::max(grid.width, grid.height))));
  cv::Mat mask = cv::Mat::zeros(grid.height + 2 * rim, grid.width + 2 * rim, CV_8U);
  const cv::Point by{rim, rim};
  cv::fillPoly(mask, std::vector<std::vector<cv::Point>>{corners}, cv::Scalar(255), cv::LINE_8,
               kShift, by);
  cv::Mat shrunk;
  cv::erode(mask, shrunk, cv::Mat::ones(2 * rim + 1, 2 * rim + 1, CV_8U), {-1, -1}, 1,
            cv::BORDER_CONSTANT, cv::Scalar(0));
  return shrunk(cv::Rect(rim, rim, grid.width, grid.height)).clone();
}

}  // namespace

PanelPicture panelPictureOf(const GreyPicture& page, const Polygon& outline, int longerSide) {
  if (page.empty() || outline.points.size() < 3) return {};
  const OneThread quiet;
  const cv::Rect cut = pixelsOf(bounds(outline), page);
  if (cut.width < kLeastSide || cut.height < kLeastSide) return {};
  const double shrink =
      std::min(1.0, static_cast<double>(longerSide) / std::max(cut.width, cut.height));
  PanelPicture panel;
  GreyPicture& p = panel.picture;
  p.width = std::max(kLeastSide / 2, static_cast<int>(std::lround(cut.width * shrink)));
  p.height = std::max(kLeastSide / 2, static_cast<int>(std::lround(cut.height * shrink)));
  p.mmPerPx = page.mmPerPx * std::max(cut.width, cut.height) / std::max(p.width, p.height);
  p.origin = page.origin + Vector{cut.x * page.mmPerPx, cut.y * page.mmPerPx};
  cv::Mat small = resizedByArea(matOf(page)(cut), p.width, p.height, CV_32F);
  const cv::Mat mask = maskOf(outline, p);
  panel.insidePixels = cv::countNonZero(mask);
  if (panel.insidePixels == 0) return {};
  small.setTo(cv::mean(small, mask), mask == 0);
  p.light.assign(small.begin<float>(), small.end<float>());
  panel.inside.assign(mask.begin<std::uint8_t>(), mask.end<std::uint8_t>());
  return panel;
}

}  // namespace tw
