// As published: entropy H = −Σ p log2 p over the 256 grey levels; shapes: scale the page to 250 px
// of height, split it into 5 layers of brightness, fill gaps up to 4 px across, count the regions
// of at least 10 px. Ours: the greys are steps of L* instead of luma, because that is what we have;
// and entropy is taken at 250 px of height too, so that line art of two values can be compared with
// painted pages.
#include "read/page_complexity.h"

#include <array>
#include <cmath>
#include <opencv2/imgproc.hpp>

#include "read/with_opencv.h"

namespace tw {

namespace {

constexpr int kHeight = 250, kLayers = 5, kGapPx = 4, kLeastPx = 10, kGreys = 256;

double entropyOf(const cv::Mat& light) {
  std::array<int, kGreys> count{};
  for (auto it = light.begin<float>(); it != light.end<float>(); ++it)
    ++count[std::clamp(static_cast<int>(*it * (kGreys - 1) + 0.5f), 0, kGreys - 1)];
  double bits = 0;
  for (const int n : count)
    if (n > 0) {
      const double p = n / static_cast<double>(light.total());
      bits -= p * std::log2(p);
    }
  return bits;
}

int shapesIn(const cv::Mat& layer) {
  cv::Mat closed, label, stats, middles;
  cv::morphologyEx(layer, closed, cv::MORPH_CLOSE, cv::Mat::ones(kGapPx + 1, kGapPx + 1, CV_8U));
  const int count = cv::connectedComponentsWithStats(closed, label, stats, middles, 8, CV_32S);
  int shapes = 0;
  for (int i = 1; i < count; ++i) shapes += stats.at<int>(i, cv::CC_STAT_AREA) >= kLeastPx;
  return shapes;
}

}  // namespace

PageComplexity complexityOf(const GreyPicture& page) {
  if (page.empty()) return {};
  const OneThread quiet;
  const int width = std::max(
      1, static_cast<int>(std::lround(static_cast<double>(page.width) * kHeight / page.height)));
  const cv::Mat light = resizedByArea(matOf(page), width, kHeight, CV_32F);
  PageComplexity c{.brightness = cv::mean(light)[0], .entropyBits = entropyOf(light)};
  for (int i = 0; i < kLayers; ++i) {
    const double from = static_cast<double>(i) / kLayers, to = (i + 1.0) / kLayers;
    const cv::Mat above = i == 0 ? light >= 0 : light >= from;
    c.shapes += shapesIn(above & (i + 1 == kLayers ? light <= 1 : light < to));
  }
  return c;
}

}  // namespace tw
