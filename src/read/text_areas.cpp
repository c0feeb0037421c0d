// Text areas.
//
// Idea. A balloon or caption is a plate: lighter than nearly all of its panel, even, with a smooth
// and nearly convex outline, and mostly with letters on it. Plates are looked for at several levels
// of light, because paper white, cream and grey grounds need different ones.
// Words. Plate: a region of pixels lighter than a level, holes filled. Marks: dark bits in a plate
// that do not touch its outline. Ring: what lies just around a plate.
// Steps: 1. at each level find the plates; 2. price each by its solidity (area over hull), size,
// evenness, contrast with its ring, marks, and how much of its outline lies on the panel's border;
// 3. keep the surest, and of plates that cover each other the surest only.
// Cost: 6 levels, 3 passes each, over some 256 × 180 px; about 3 ms.
// Badly done: a moon, a lit window, a white shirt and a snow field between trees are plates too;
// balloons in black or colour are not found; two that overlap may come as one; on bare line art
// only lettered balloons tell themselves from other closed white shapes. Source: common practice
// (balloons are light, closed and convex), the limits are ours, set on one half of some 70 panels
// and judged on the other.
#include "read/text_areas.h"

#include <algorithm>
#include <opencv2/imgproc.hpp>

#include "read/with_opencv.h"

namespace tw {

namespace {

constexpr double kLevels[] = {0.80, 0.86, 0.91, 0.945, 0.97, 0.988};
constexpr int kOpenings[] = {0, 3, 7};                     // px of the working picture
constexpr double kLeastShare = 0.003, kGoodShare = 0.012;  // of the panel
constexpr double kLargeShare = 0.30, kMostShare = 0.45;
constexpr double kRoughSolidity = 0.65, kGoodSolidity = 0.88;
constexpr double kEven = 0.012, kUneven = 0.05;  // spread of light on the plate
constexpr double kDrop = 0.07, kInwardPx = 2;
constexpr int kOutwardPx = 4, kOutlinePx = 2;
constexpr double kSoft = 0.6, kCrisp = 0.85;  // share of the outline with a sharp edge
constexpr double kMarkDepth = 0.12;           // a mark is darker than its plate by this
constexpr double kLargestMark = 0.06, kHighestMark = 0.4;  // of the plate's area and height
constexpr double kLowest = 0.5, kHighest = 1.7;            // of the usual mark's height
constexpr double kLeastInk = 0.03;                         // of the plate
constexpr int kFewMarks = 2, kManyMarks = 8;
constexpr double kBare = 0.75;  // the most that a plate without marks is worth
constexpr double kGreyish = 0.86, kPaperLike = 0.94;
constexpr double kPainted = 0.5, kLineArt = 0.75;      // share of calm places that are quite flat
constexpr double kFlatStep = 0.004, kLineStep = 0.04;  // between neighbours
constexpr double kFlat = 0.008, kShaded = 0.02;
/// Two that cover each other by more than this share of the smaller are one.
constexpr double kSamePlate = 0.3;
constexpr double kLeastSure = 0.2;
/// What lies along more of the panel's border than this is its ground.
constexpr double kGroundTouch = 0.25;

/// 0 below `low`, 1 above `high`, straight between; `low` may be the larger.
double ramp(double value, double low, double high) {
  return std::clamp((value - low) / (high - low), 0.0, 1.0);
}

struct Plate {
  std::vector<cv::Point> contour;
  cv::Rect box;
  double sure = 0;
  int marks = 0;
};

struct Looked {
  cv::Mat light, inside, rim;
  double panelArea = 1, rimLength = 1, flatShare = 0;
};

/// Of all places beside no line, the share where light does not change from pixel to pixel: nearly
/// all in line art with flat tones, few in a painting.
double flatShareOf(const cv::Mat& light, const cv::Mat& inside) {
  cv::Mat most, least;
  cv::dilate(light, most, cv::Mat::ones(3, 3, CV_8U));
  cv::erode(light, least, cv::Mat::ones(3, 3, CV_8U));
  const cv::Mat range = most - least;
  const int calm = cv::countNonZero((range < kLineStep) & inside);
  return calm == 0 ? 1.0
                   : cv::countNonZero((range < kFlatStep) & inside) / static_cast<double>(calm);
}

Looked lookedAt(const PanelPicture& panel) {
  const GreyPicture& p = panel.picture;
  Looked l;
  l.light = matOf(p);
  l.inside = cv::Mat(p.height, p.width, CV_8U, const_cast<std::uint8_t*>(panel.inside.data()));
  cv::Mat core;
  cv::erode(l.inside, core, cv::Mat::ones(3, 3, CV_8U), {-1, -1}, 1, cv::BORDER_CONSTANT,
            cv::Scalar(0));
  l.rim = l.inside & ~core;
  l.panelArea = panel.insidePixels;
  l.rimLength = cv::countNonZero(l.rim);
  l.flatShare = flatShareOf(l.light, l.inside);
  return l;
}

/// The plate's own window of the picture, with room for its ring.
struct Window {
  cv::Rect at;
  cv::Mat plate;  ///< 255 on the filled plate
};

Window windowOf(const Plate& plate, const cv::Size& size) {
  Window w;
  w.at = plate.box & cv::Rect({0, 0}, size);
  w.plate = cv::Mat::zeros(w.at.size(), CV_8U);
  cv::drawContours(w.plate, std::vector<std::vector<cv::Point>>{plate.contour}, 0, cv::Scalar(255),
                   cv::FILLED, cv::LINE_8, cv::noArray(), 0, -w.at.tl());
  return w;
}

/// Share of the outline where the light drops sharply outward: an inked or painted edge, not the
/// place where a level happens to cut a slope.
double crispShare(const Plate& plate, const Looked& l) {
  const cv::Rect grid({0, 0}, l.light.size());
  const auto outward = [&](std::size_t i) {  // unit normal from the outline's own run
    const std::size_t n = plate.contour.size(), step = std::min<std::size_t>(4, n / 4);
    const cv::Point along = plate.contour[(i + step) % n] - plate.contour[(i + n - step) % n];
    const double length = std::max(1.0, std::hypot(along.x, along.y));
    return cv::Point2d(along.y / length, -along.x / length);
  };
  const double sign = cv::contourArea(plate.contour, true) > 0 ? 1 : -1;
  int crisp = 0, asked = 0;
  for (std::size_t i = 0; i < plate.contour.size(); i += 2) {
    const cv::Point at = plate.contour[i];
    if (l.rim.at<std::uint8_t>(at) != 0) continue;
    const cv::Point2d out = sign * outward(i);
    const cv::Point inner(cvRound(at.x - kInwardPx * out.x), cvRound(at.y - kInwardPx * out.y));
    if (!grid.contains(inner)) continue;
    float darkest = 1;
    for (int px = 1; px <= kOutwardPx; ++px) {  // an inked outline may be thin
      const cv::Point outer(cvRound(at.x + px * out.x), cvRound(at.y + px * out.y));
      if (grid.contains(outer)) darkest = std::min(darkest, l.light.at<float>(outer));
    }
    ++asked;
    crisp += l.light.at<float>(inner) - darkest > kDrop;
  }
  return asked == 0 ? 0.0 : crisp / static_cast<double>(asked);
}

/// Dark bits of one height, as letters and words have it, that ink the plate as lettering does.
int marksIn(const Window& w, const cv::Mat& light, double own) {
  cv::Mat core, label, stats, middles;  // bits of the plate's own outline are no marks
  cv::erode(w.plate, core, cv::Mat::ones(2 * kOutlinePx + 1, 2 * kOutlinePx + 1, CV_8U), {-1, -1},
            1, cv::BORDER_CONSTANT, cv::Scalar(0));
  const cv::Mat dark = (light < own - kMarkDepth) & core;
  const double plate = cv::countNonZero(w.plate);
  const int count = cv::connectedComponentsWithStats(dark, label, stats, middles, 8, CV_32S);
  std::vector<int> heights;
  double ink = 0;
  for (int i = 1; i < count; ++i) {
    const int height = stats.at<int>(i, cv::CC_STAT_HEIGHT),
              area = stats.at<int>(i, cv::CC_STAT_AREA);
    if (area > kLargestMark * plate || height > kHighestMark * w.plate.rows) continue;
    heights.push_back(height);
    ink += area / plate;
  }
  if (heights.empty() || ink < kLeastInk) return 0;
  std::nth_element(heights.begin(), heights.begin() + static_cast<long>(heights.size() / 2),
                   heights.end());
  const double usual = heights[heights.size() / 2];
  return static_cast<int>(std::count_if(heights.begin(), heights.end(), [&](int height) {
    return height >= kLowest * usual && height <= kHighest * usual;
  }));
}

/// What a plate without marks is worth: an empty balloon is as light and even as paper.
/// In line art with flat tones every white shape is so, and it says little.
double bareWorth(double light, double spread, double flatShare) {
  return kBare * ramp(light, kGreyish, kPaperLike) * ramp(spread, kShaded, kFlat) *
         ramp(flatShare, kLineArt, kPainted);
}

void price(Plate& plate, const cv::Mat& raw, const Looked& l, double area) {
  std::vector<cv::Point> hull;
  cv::convexHull(plate.contour, hull);
  const double solid =
      ramp(area / std::max(1.0, cv::contourArea(hull)), kRoughSolidity, kGoodSolidity);
  const double share = area / l.panelArea;
  const double size = ramp(share, kLeastShare, kGoodShare) * ramp(share, kMostShare, kLargeShare);
  if (solid * size == 0) return;
  const Window w = windowOf(plate, l.light.size());
  const cv::Mat light = l.light(w.at), bare = raw(w.at) & w.plate;
  cv::Scalar mean, spread;
  cv::meanStdDev(light, mean, spread, bare);
  const double even = ramp(spread[0], kUneven, kEven);
  const double crisp = ramp(crispShare(plate, l), kSoft, kCrisp);
  plate.marks = marksIn(w, light, mean[0]);
  const double lettered = ramp(plate.marks, kFewMarks, kManyMarks);
  int touched = 0;
  for (const cv::Point& p : plate.contour) touched += l.rim.at<std::uint8_t>(p) != 0;
  const double free = ramp(touched / static_cast<double>(plate.contour.size()), 0.5, 0.25);
  plate.sure = solid * size * even * free * crisp *
               std::max(lettered, bareWorth(mean[0], spread[0], l.flatShare));
}

/// Regions with their holes filled, without what is the panel's ground. A region that lies in a
/// hole of the ground, as a balloon on paper does, is one of its own.
cv::Mat filledShapes(const cv::Mat& raw, const Looked& l) {
  std::vector<std::vector<cv::Point>> contours;
  std::vector<cv::Vec4i> kin;
  cv::findContours(raw, contours, kin, cv::RETR_CCOMP, cv::CHAIN_APPROX_NONE);
  cv::Mat filled = cv::Mat::zeros(raw.size(), CV_8U);
  for (std::size_t i = 0; i < contours.size(); ++i) {
    const bool isHole = kin[i][3] >= 0;
    int touched = 0;
    for (const cv::Point& p : contours[i]) touched += l.rim.at<std::uint8_t>(p) != 0;
    if (isHole || touched > kGroundTouch * l.rimLength) continue;
    cv::drawContours(filled, contours, static_cast<int>(i), cv::Scalar(255), cv::FILLED);
  }
  return filled;
}

/// Necks thinner than the opening are cut through. By distances, which cost the same at any radius.
cv::Mat opened(const cv::Mat& filled, int radius) {
  if (radius == 0) return filled;
  cv::Mat within, away;
  cv::distanceTransform(filled, within, cv::DIST_L2, cv::DIST_MASK_3);
  cv::distanceTransform(within <= radius, away, cv::DIST_L2, cv::DIST_MASK_3);
  return away <= radius;
}

void addPlates(const Looked& l, const cv::Mat& raw, const cv::Mat& shapes,
               std::vector<Plate>& all) {
  std::vector<std::vector<cv::Point>> contours;
  cv::findContours(shapes, contours, cv::RETR_EXTERNAL, cv::CHAIN_APPROX_NONE);
  for (auto& contour : contours) {
    const double area = cv::contourArea(contour);
    if (area < kLeastShare * l.panelArea) continue;
    Plate plate{.contour = std::move(contour)};
    plate.box = cv::boundingRect(plate.contour);
    price(plate, raw, l, area);
    if (plate.sure >= kLeastSure) all.push_back(std::move(plate));
  }
}

TextArea areaOf(const Plate& plate, const GreyPicture& p) {
  TextArea area{.sure = plate.sure, .marks = plate.marks};
  const auto onPage = [&](double x, double y) {
    return Point{p.origin.x + x * p.mmPerPx, p.origin.y + y * p.mmPerPx};
  };
  area.box = {onPage(plate.box.x, plate.box.y), onPage(plate.box.br().x, plate.box.br().y)};
  std::vector<cv::Point> fewer;
  cv::approxPolyDP(plate.contour, fewer, 1.0, true);
  for (const cv::Point& c : fewer) area.outline.points.push_back(onPage(c.x + 0.5, c.y + 0.5));
  return area;
}

}  // namespace

std::vector<TextArea> textAreas(const PanelPicture& panel) {
  if (panel.empty()) return {};
  const OneThread quiet;
  const Looked looked = lookedAt(panel);
  std::vector<Plate> plates;
  for (const double level : kLevels) {
    const cv::Mat raw = (looked.light > level) & looked.inside;
    const cv::Mat filled = filledShapes(raw, looked);
    for (const int opening : kOpenings) addPlates(looked, raw, opened(filled, opening), plates);
  }
  std::stable_sort(plates.begin(), plates.end(),
                   [](const Plate& a, const Plate& b) { return a.sure > b.sure; });
  std::vector<TextArea> kept;
  std::vector<cv::Rect> taken;
  for (const Plate& plate : plates) {
    const auto same = [&](const cv::Rect& r) {
      return (r & plate.box).area() > kSamePlate * std::min(r.area(), plate.box.area());
    };
    if (std::any_of(taken.begin(), taken.end(), same)) continue;
    taken.push_back(plate.box);
    kept.push_back(areaOf(plate, panel.picture));
  }
  return kept;
}

}  // namespace tw
