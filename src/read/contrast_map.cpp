// Centre and surround: the difference of two Gaussian means, as receptive fields of the eye have it
// (difference of Gaussians; Itti, Koch & Niebur 1998 take it across the levels of a pyramid). The
// picture's rim is continued outward, so a panel's own border makes no contrast.
#include "read/contrast_map.h"

#include <cmath>
#include <opencv2/imgproc.hpp>

#include "read/with_opencv.h"

namespace tw {

namespace {

constexpr double kWidePx = 6;
constexpr int kLeastSide = 32;
/// What surrounds a strong place answers the other way, with up to a third of its strength.
constexpr double kSkirt = 0.4;
/// Less than this is the rounding of floats.
constexpr double kNothing = 1e-5;

/// A wide blur is made on a smaller picture: it leaves nothing there that the smaller one lacks.
cv::Mat blurred(const cv::Mat& light, double sigmaPx) {
  if (sigmaPx > kWidePx && std::min(light.rows, light.cols) >= kLeastSide) {
    cv::Mat out;
    const cv::Mat half = resizedByArea(light, (light.cols + 1) / 2, (light.rows + 1) / 2, CV_32F);
    const double shrink = half.cols / static_cast<double>(light.cols);
    cv::resize(blurred(half, sigmaPx * shrink), out, light.size(), 0, 0, cv::INTER_LINEAR);
    return out;
  }
  cv::Mat out;
  const int reach = static_cast<int>(3 * sigmaPx + 1);
  cv::GaussianBlur(light, out, {2 * reach + 1, 2 * reach + 1}, sigmaPx, sigmaPx,
                   cv::BORDER_REPLICATE);
  return out;
}

/// No neighbour is higher; of equal neighbours the first counts.
bool isTop(const PlaceMap& map, int x, int y) {
  const double own = std::abs(map.at(x, y));
  for (int v = std::max(0, y - 1); v <= std::min(map.height - 1, y + 1); ++v)
    for (int u = std::max(0, x - 1); u <= std::min(map.width - 1, x + 1); ++u) {
      const bool before = v < y || (v == y && u < x);
      const double other = std::abs(map.at(u, v));
      if (other > own || (before && other == own)) return false;
    }
  return true;
}

}  // namespace

PlaceMap contrastMap(const GreyPicture& picture, double centreMm, double surroundMm) {
  if (picture.empty()) return {};
  const OneThread quiet;
  const cv::Mat light = matOf(picture);
  const cv::Mat difference =
      blurred(light, centreMm / picture.mmPerPx) - blurred(light, surroundMm / picture.mmPerPx);
  PlaceMap map{.width = picture.width, .height = picture.height, .covers = coveredBy(picture)};
  map.value.assign(difference.begin<float>(), difference.end<float>());
  return map;
}

std::vector<Peak> peaksOf(const PlaceMap& map, double least, double apartMm, double skirtMm) {
  std::vector<Peak> tops;
  for (int y = 0; y < map.height; ++y)
    for (int x = 0; x < map.width; ++x) {
      const double v = map.at(x, y);
      if (std::abs(v) > kNothing && isTop(map, x, y))
        tops.push_back({map.onPage(x, y), std::abs(v), v > 0});
    }
  std::stable_sort(tops.begin(), tops.end(),
                   [](const Peak& a, const Peak& b) { return a.strength > b.strength; });
  std::vector<Peak> peaks;
  for (const Peak& top : tops) {
    if (top.strength < least * tops.front().strength) break;
    const auto covers = [&](const Peak& p) {
      const double away = (p.at - top.at).length();
      const bool skirt = p.lighter != top.lighter && top.strength < kSkirt * p.strength;
      return away < (skirt ? skirtMm : apartMm);
    };
    if (std::none_of(peaks.begin(), peaks.end(), covers)) peaks.push_back(top);
  }
  return peaks;
}

}  // namespace tw
