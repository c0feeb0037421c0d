// Steps: 1. cut the outline's box out of the page; 2. average it down, never up; 3. draw the
// outline on the same grid, shrunk by the rim; 4. continue the panel outward into what is
// masked, so that its border makes no contrast of its own. Cost: one pass over the panel's pixels.
#include "read/panel_picture.h"

#include <cmath>
#include <opencv2/imgproc.hpp>

#include "geometry/polygon.h"
#include "read/filled_mask.h"
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

/// The outline on the picture's grid, shrunk by the rim, at the grid's own sides too.
cv::Mat maskOf(const Polygon& outline, const GreyPicture& grid) {
  std::vector<std::uint8_t> filled = filledMask({outline}, grid);
  const cv::Mat mask(grid.height, grid.width, CV_8U, filled.data());
  const int rim =
      std::max(1, static_cast<int>(std::lround(kPanelRim * std::max(grid.width, grid.height))));
  cv::Mat shrunk;
  cv::erode(mask, shrunk, cv::Mat::ones(2 * rim + 1, 2 * rim + 1, CV_8U), {-1, -1}, 1,
            cv::BORDER_CONSTANT, cv::Scalar(0));
  return shrunk;
}

}  // namespace

void continueOutward(GreyPicture& picture, const std::vector<std::uint8_t>& inside) {
  const OneThread quiet;
  const cv::Mat mask(picture.height, picture.width, CV_8U,
                     const_cast<std::uint8_t*>(inside.data()));
  if (cv::countNonZero(mask) == 0) return;
  cv::Mat away, label;
  const cv::Mat outside = mask == 0;
  cv::distanceTransform(outside, away, label, cv::DIST_L2, cv::DIST_MASK_5, cv::DIST_LABEL_PIXEL);
  const auto* labels = label.ptr<int>();
  std::vector<float> ofLabel(inside.size() + 1);
  for (std::size_t i = 0; i < inside.size(); ++i)
    if (inside[i]) ofLabel[static_cast<std::size_t>(labels[i])] = picture.light[i];
  for (std::size_t i = 0; i < inside.size(); ++i)
    if (!inside[i]) picture.light[i] = ofLabel[static_cast<std::size_t>(labels[i])];
}

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
  p.light.resize(static_cast<std::size_t>(p.width) * static_cast<std::size_t>(p.height));
  const cv::Mat small = resizedByArea(matOf(page)(cut), p.width, p.height, CV_32F);
  const cv::Mat mask = maskOf(outline, p);
  panel.insidePixels = cv::countNonZero(mask);
  if (panel.insidePixels == 0) return {};
  p.light.assign(small.begin<float>(), small.end<float>());
  panel.inside.assign(mask.begin<std::uint8_t>(), mask.end<std::uint8_t>());
  continueOutward(p, panel.inside);
  return panel;
}

}  // namespace tw
