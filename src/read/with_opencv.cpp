#include "read/with_opencv.h"

#include <opencv2/core/utility.hpp>
#include <opencv2/imgproc.hpp>

namespace tw {

namespace {

/// A map whose highest is above its lowest by less than this share of it is flat.
constexpr double kFlat = 1e-9;

}  // namespace

OneThread::OneThread() {
  static const bool told = [] {
    cv::setNumThreads(1);
    return true;
  }();
  (void)told;
}

cv::Mat matOf(const GreyPicture& picture) {
  return cv::Mat(picture.height, picture.width, CV_32F, const_cast<float*>(picture.light.data()));
}

cv::Mat resizedByArea(const cv::Mat& picture, int width, int height, int depth) {
  cv::Mat exact, out;
  picture.convertTo(exact, depth);
  cv::resize(exact, out, {width, height}, 0, 0, cv::INTER_AREA);
  return out;
}

Rect coveredBy(const GreyPicture& p) {
  return {p.origin, p.origin + Vector{p.width * p.mmPerPx, p.height * p.mmPerPx}};
}

PlaceMap scaledMap(const cv::Mat& map, const GreyPicture& picture) {
  PlaceMap out{.width = map.cols, .height = map.rows, .covers = coveredBy(picture)};
  double least = 0, most = 0;
  cv::minMaxLoc(map, &least, &most);
  const bool flat = most - least <= kFlat * most;
  out.value.reserve(map.total());
  for (int y = 0; y < map.rows; ++y)
    for (int x = 0; x < map.cols; ++x)
      out.value.push_back(flat ? 0.0 : (map.at<double>(y, x) - least) / (most - least));
  return out;
}

}  // namespace tw
