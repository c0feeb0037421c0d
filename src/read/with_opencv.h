// The few turns between our pictures and OpenCV's, for the .cpp files that work with it; no other
// header of ours names OpenCV.
#pragma once

#include <opencv2/core.hpp>

#include "geometry/grey_picture.h"
#include "read/place_map.h"

namespace tw {

/// OpenCV is told once to work on the calling thread alone, so that a result never depends on the
/// number of cores; who has many pictures shares them out with base/parallel.h.
struct OneThread {
  OneThread();
};

/// Looks at the picture's own pixels; must not outlive it, must not be written to.
cv::Mat matOf(const GreyPicture& picture);
/// Averaged when smaller, interpolated when larger; depth CV_32F or CV_64F.
cv::Mat resizedByArea(const cv::Mat& picture, int width, int height, int depth);
/// Scaled so that the least is 0 and the most 1, over the picture's rectangle; all 0 when flat.
PlaceMap scaledMap(const cv::Mat& map, const GreyPicture& picture);
/// The picture's rectangle, mm on the page.
Rect coveredBy(const GreyPicture& picture);

}  // namespace tw
