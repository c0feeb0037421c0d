// Closed shapes by Boolean maps.
//
// Idea. Cut the picture at many levels of light. At each level the lighter and the darker places
// fall into regions. A region that the panel's border does not touch is surrounded: it is a figure
// on a ground. What is surrounded at many levels stands out.
// Words. Touched share: of a region's own outline, the part that lies on the panel's border. A
// figure that the border cuts is touched over a small share, a ground over a large one.
// Steps: 1. average down to 96 px and blur a little; 2. for 16 levels between the darkest and the
// lightest, and for both sides of each: find regions, give each the weight
// 1 − touched share / kMostTouched, not below 0; 3. add up, blur, scale to 0 … 1. A place scores by
// how often it is surrounded. (The publication also divides each level's map by its length, which
// favours small bits; on our half of the panels that found fewer figures.)
// Cost: 32 labelings of some 96 × 70 px; about 1 ms.
// Badly done: it sees light, not meaning: a window in a wall is as closed as a head before it.
// Source: Boolean map saliency (Zhang & Sclaroff 2013, ICCV, doi:10.1109/ICCV.2013.26), from
// memory, high for the idea; regions cut by the border counting in part is ours.
#include "read/closed_shapes.h"

#include <cmath>
#include <opencv2/imgproc.hpp>

#include "read/with_opencv.h"

namespace tw {

namespace {

constexpr int kSide = 96;
constexpr int kLevels = 16;
constexpr double kMostTouched = 0.3;
constexpr double kBlurBefore = 0.6, kBlurAfter = 2.0;  // px
/// Light may vary by this much in a panel that is still blank.
constexpr double kBlank = 0.02;

struct Sides {
  cv::Mat light, inside, rim;  ///< rim: inside pixels beside a masked one
};

Sides prepared(const PanelPicture& panel) {
  const GreyPicture& p = panel.picture;
  const double shrink = std::min(1.0, static_cast<double>(kSide) / std::max(p.width, p.height));
  const int width = std::max(4, static_cast<int>(std::lround(p.width * shrink)));
  const int height = std::max(4, static_cast<int>(std::lround(p.height * shrink)));
  Sides s;
  s.light = resizedByArea(matOf(p), width, height, CV_32F);
  cv::GaussianBlur(s.light, s.light, {0, 0}, kBlurBefore);
  const cv::Mat mask(p.height, p.width, CV_8U, const_cast<std::uint8_t*>(panel.inside.data()));
  s.inside = resizedByArea(mask, width, height, CV_32F) > 127;
  cv::Mat core;
  cv::erode(s.inside, core, cv::Mat::ones(3, 3, CV_8U), {-1, -1}, 1, cv::BORDER_CONSTANT,
            cv::Scalar(0));
  s.rim = s.inside & ~core;
  return s;
}

/// Of each region: pixels of its outline, and how many of them lie on the panel's border.
struct Outlines {
  std::vector<int> length, touched;
};

Outlines outlinesOf(const cv::Mat& label, int count, const cv::Mat& rim) {
  Outlines out{std::vector<int>(count), std::vector<int>(count)};
  for (int y = 0; y < label.rows; ++y)
    for (int x = 0; x < label.cols; ++x) {
      const int own = label.at<int>(y, x);
      if (own == 0) continue;
      const bool atRim = rim.at<std::uint8_t>(y, x) != 0;
      const auto other = [&](int u, int v) {
        return u < 0 || v < 0 || u >= label.cols || v >= label.rows || label.at<int>(v, u) != own;
      };
      const bool edge = other(x - 1, y) || other(x + 1, y) || other(x, y - 1) || other(x, y + 1);
      out.length[own] += atRim || edge;
      out.touched[own] += atRim;
    }
  return out;
}

/// Adds the surrounded regions of one side of one level.
void addSurrounded(const cv::Mat& side, const cv::Mat& rim, cv::Mat& sum) {
  cv::Mat label;
  const int count = cv::connectedComponents(side, label, 4, CV_32S);
  const Outlines outlines = outlinesOf(label, count, rim);
  std::vector<float> weight(count);
  for (int i = 1; i < count; ++i) {
    const double share = outlines.touched[i] / static_cast<double>(outlines.length[i]);
    weight[i] = static_cast<float>(std::max(0.0, 1 - share / kMostTouched));
  }
  cv::Mat map(label.size(), CV_32F);
  for (int y = 0; y < label.rows; ++y)
    for (int x = 0; x < label.cols; ++x) map.at<float>(y, x) = weight[label.at<int>(y, x)];
  sum += map;
}

}  // namespace

PlaceMap closedShapes(const PanelPicture& panel) {
  if (panel.empty()) return {};
  const OneThread quiet;
  const Sides s = prepared(panel);
  double least = 0, most = 0;
  cv::minMaxLoc(s.light, &least, &most, nullptr, nullptr, s.inside);
  cv::Mat sum = cv::Mat::zeros(s.light.size(), CV_32F);
  for (int i = 1; i <= kLevels && most - least > kBlank; ++i) {
    const double level = least + (most - least) * i / (kLevels + 1);
    addSurrounded((s.light > level) & s.inside, s.rim, sum);
    addSurrounded((s.light <= level) & s.inside, s.rim, sum);
  }
  cv::Mat exact;
  sum.convertTo(exact, CV_64F);
  cv::GaussianBlur(exact, exact, {0, 0}, kBlurAfter);
  return scaledMap(exact, panel.picture);
}

}  // namespace tw
