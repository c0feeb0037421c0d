#include "read/with_opencv.h"

#include <doctest/doctest.h>

#include <opencv2/core/utility.hpp>

namespace tw {

TEST_CASE("OpenCV works on the calling thread alone") {
  const OneThread quiet;
  CHECK(cv::getNumThreads() == 1);
}

TEST_CASE("a map is scaled to its least and most and a flat one is all zero") {
  const GreyPicture picture{.width = 4,
                            .height = 2,
                            .light = std::vector<float>(8, 1.f),
                            .origin = {10, 20},
                            .mmPerPx = 2};
  cv::Mat map = (cv::Mat_<double>(1, 3) << 2, 4, 3);
  const PlaceMap scaled = scaledMap(map, picture);
  CHECK(scaled.value == std::vector<double>{0, 1, 0.5});
  CHECK(scaled.covers == Rect{{10, 20}, {18, 24}});
  CHECK(scaledMap(cv::Mat::ones(2, 2, CV_64F) * 7, picture).value == std::vector<double>(4, 0.0));
}

TEST_CASE("shrinking averages and never picks") {
  const GreyPicture board{.width = 4, .height = 2, .light = {0, 1, 0, 1, 1, 0, 1, 0}};
  const cv::Mat small = resizedByArea(matOf(board), 2, 1, CV_64F);
  CHECK(small.at<double>(0, 0) == doctest::Approx(0.5));
  CHECK(small.at<double>(0, 1) == doctest::Approx(0.5));
}

}  // namespace tw
