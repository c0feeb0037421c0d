// The squint test.
//
// Idea. Artists hold a page at arm's length and squint: detail goes, masses of light and dark stay,
// and the panel's focus should still be what stands out. A place stands out by the difference
// between its own light and the light around it.
// Words. Strength of the focus: the highest contrast on it. Mass: a place with all that hangs
// together with it and stands out half as much; it counts once, and the focus' own mass is no rival
// of it. Elsewhere: another mass, farther from the focus than the blur reaches. Ground: what lies
// around the focus within the surround's reach. Steps: 1. shrink the panel to 1.3 mm a pixel; 2.
// contrast map with the scales of arms_length.h;
// 3. the focus' highest value, and the peaks of the rest; 4. rank, share, and the mean light of the
// focus less its ground's.
// Cost: two blurs of some 80 × 60 px; about 0.2 ms.
// Badly done: colour contrast is not seen; a focus that is textured finely on an even ground of the
// same mean grey counts as lost, which squinting says too.
// Source: common practice (the squint test); contrast of centre and surround after Itti, Koch &
// Niebur 1998; scales derived from 1 degree = 10.5 mm at 60 cm, our choice of distance.
#include "read/squint.h"

#include <opencv2/imgproc.hpp>

#include "geometry/polygon.h"
#include "read/arms_length.h"
#include "read/contrast_map.h"
#include "read/filled_mask.h"
#include "read/panel_picture.h"
#include "read/with_opencv.h"

namespace tw {

namespace {

/// Weaker places than this are nothing to compare with: a step of L* that is hardly seen.
constexpr double kLeastStrength = 0.01;
constexpr double kNearMm = 2 * kSquintCentreMm;  // the focus' own blur
constexpr double kApartMm = kSquintSurroundMm;
constexpr double kOfOneMass = 0.5;
constexpr int kEdgePx = 2;
constexpr double kSkirtMm = 4 * kSquintSurroundMm;

cv::Mat grown(const cv::Mat& mask, double mm, double mmPerPx) {
  const int by = std::max(1, static_cast<int>(mm / mmPerPx + 0.5));
  cv::Mat out;
  cv::dilate(mask, out, cv::getStructuringElement(cv::MORPH_ELLIPSE, {2 * by + 1, 2 * by + 1}),
             {-1, -1}, 1, cv::BORDER_CONSTANT, cv::Scalar(0));
  return out;
}

cv::Mat matOf(const PlaceMap& map) {
  return cv::Mat(map.height, map.width, CV_64F, const_cast<double*>(map.value.data()));
}

/// Mean light of the focus less that of the ground around it.
double contrastWithGround(const cv::Mat& light, const cv::Mat& focus, const cv::Mat& inside,
                          double mmPerPx) {
  const cv::Mat ground = grown(focus, kSquintSurroundMm, mmPerPx) & ~focus & inside;
  if (cv::countNonZero(ground) == 0) return 0;
  return cv::mean(light, focus)[0] - cv::mean(light, ground)[0];
}

/// The mass that a place belongs to: all that stands out at least half as much and hangs together
/// with it. The light rim of a dark mass belongs to it too, across the edge where contrast is 0.
cv::Mat massOf(const PlaceMap& map, const Peak& peak, cv::Point at) {
  const cv::Mat strong = cv::abs(matOf(map)) >= kOfOneMass * peak.strength;
  cv::Mat joined, label;
  cv::dilate(strong, joined, cv::Mat::ones(2 * kEdgePx + 1, 2 * kEdgePx + 1, CV_8U), {-1, -1}, 1,
             cv::BORDER_CONSTANT, cv::Scalar(0));
  cv::connectedComponents(joined, label, 8, CV_32S);
  return label == label.at<int>(at);
}

/// `rest`: where another place may stand; `own`: the focus.
void rankAmong(const PlaceMap& map, const cv::Mat& own, cv::Mat rest, Squint& squint) {
  for (const Peak& peak : peaksOf(map, 0, kApartMm, kSkirtMm)) {
    if (peak.strength < kLeastStrength) break;
    const cv::Point at(
        static_cast<int>((peak.at.x - map.covers.min.x) / map.covers.width() * map.width),
        static_cast<int>((peak.at.y - map.covers.min.y) / map.covers.height() * map.height));
    if (rest.at<std::uint8_t>(at) == 0) continue;
    const cv::Mat mass = massOf(map, peak, at);
    rest.setTo(0, mass);
    if (cv::countNonZero(mass & own) > 0) continue;
    if (squint.elsewhere == 0) {
      squint.elsewhere = peak.strength;
      squint.elsewhereAt = peak.at;
    }
    if (peak.strength <= squint.strength) break;
    ++squint.rank;
  }
}

/// With room for the blur.
Region unitedBoxes(const std::vector<Rect>& boxes) {
  std::vector<Polygon> outlines;
  for (const Rect& box : boxes) outlines.push_back(polygonOf(box.outset(kNearMm)));
  return united(outlines);
}

}  // namespace

Squint squintAt(const GreyPicture& page, const Polygon& outline, const Region& focus,
                const std::vector<Rect>& copy) {
  const OneThread quiet;
  const Rect box = bounds(outline);
  const PanelPicture panel =
      panelPictureOf(page, outline, squintSide(std::max(box.width(), box.height())));
  Squint squint;
  if (panel.empty()) return squint;
  const GreyPicture& small = panel.picture;
  const PlaceMap map = contrastMap(small, kSquintCentreMm, kSquintSurroundMm);
  const cv::Mat inside(small.height, small.width, CV_8U,
                       const_cast<std::uint8_t*>(panel.inside.data()));
  std::vector<std::uint8_t> filled = filledMask(focus, small);
  const cv::Mat own = cv::Mat(small.height, small.width, CV_8U, filled.data()) & inside;
  squint.seen = cv::countNonZero(own) > 0;
  if (squint.seen) {
    cv::minMaxLoc(cv::abs(matOf(map)), nullptr, &squint.strength, nullptr, nullptr, own);
    squint.contrast = contrastWithGround(matOf(small), own, inside, small.mmPerPx);
  }
  const cv::Mat near = squint.seen ? grown(own, kNearMm, small.mmPerPx) : own;
  std::vector<std::uint8_t> lettered = filledMask(unitedBoxes(copy), small);
  const cv::Mat noRival(small.height, small.width, CV_8U, lettered.data());
  rankAmong(map, own, inside & ~near & ~noRival, squint);
  const double both = squint.strength + squint.elsewhere;
  squint.holds = both > 0 ? squint.strength / both : 0;
  return squint;
}

Squint squintAt(const GreyPicture& page, const Polygon& outline, const Rect& focus,
                const std::vector<Rect>& copy) {
  return squintAt(page, outline, Region{polygonOf(focus)}, copy);
}

}  // namespace tw
