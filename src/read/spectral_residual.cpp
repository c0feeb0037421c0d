// The spectral residual.
//
// Idea. Natural pictures have log spectra that look alike: smooth and falling. What a picture's own
// log spectrum has beyond its local mean belongs to what is unusual in it; turned back into a
// picture with the old phase, it shows where.
// Steps, as published: 1. shrink to 64 px across, averaging; 2. F = its Fourier transform,
// L = log|F|, P = arg F; 3. R = L less its 3 × 3 mean, border replicated; 4. S = |inverse
// transform of exp(R + iP)|²; 5. smooth by a 10 × 10 Gaussian window of sigma 2.5; 6. scale to
// 0 … 1.
// Two things are ours. 1e-6 is added to |F| before the log, for blank pictures have zeros; and a
// frequency that is not there (|F| within the rounding of the picture's floats) has no phase and
// adds nothing, so that a blank picture gives a flat map and not its own rounding noise. The border
// of step 5 is replicated too; the publication does not say. The window of 10 has no middle cell:
// as in the re-published reference code it reaches 4 cells back and 5 ahead, so each cell speaks
// for the place half a cell to its lower right. Cost: two transforms of some 64 × 90; about 0.2 ms.
// Badly done: a pattern whose period divides the picture exactly has lone peaks in its spectrum,
// which a 3 × 3 mean does not take away; a shape with exact zeros in its spectrum rings. A plain
// dark figure on a plain light ground is found at its edges; borders of the picture itself weigh
// much, so the inside of a panel is asked, not its frame. Source: Hou & Zhang 2007, constants read
// in re-publications of the reference code.
#include "read/spectral_residual.h"

#include <cmath>
#include <opencv2/imgproc.hpp>

#include "read/with_opencv.h"

namespace tw {

namespace {

constexpr double kLeastAmplitude = 1e-6;
/// A picture in float holds no frequency below this, times its number of pixels.
constexpr double kRounding = 5e-7;
constexpr int kWindow = 10;
constexpr double kSigma = 2.5;

cv::Mat shrunken(const GreyPicture& picture) {
  const int height = std::max(1, static_cast<int>(std::lround(static_cast<double>(picture.height) *
                                                              kSpectralWidth / picture.width)));
  return resizedByArea(matOf(picture), kSpectralWidth, height, CV_64F);
}

/// exp(R) beside the old phase, in place of the spectrum.
void keepResidual(cv::Mat& spectrum) {
  cv::Mat planes[2];
  cv::split(spectrum, planes);
  cv::Mat amplitude, logged, mean;
  cv::magnitude(planes[0], planes[1], amplitude);
  cv::log(amplitude + kLeastAmplitude, logged);
  cv::blur(logged, mean, {3, 3}, {-1, -1}, cv::BORDER_REPLICATE);
  const double least = kRounding * static_cast<double>(spectrum.total());
  for (int y = 0; y < spectrum.rows; ++y)
    for (int x = 0; x < spectrum.cols; ++x) {
      const double size = amplitude.at<double>(y, x);
      const double residual = logged.at<double>(y, x) - mean.at<double>(y, x);
      spectrum.at<cv::Vec2d>(y, x) *= size < least ? 0.0 : std::exp(residual) / size;
    }
}

/// Not cv::getGaussianKernel: version 4.6 gives the two middle cells of an even window weight 1.
cv::Mat gaussianWindow() {
  cv::Mat window(kWindow, 1, CV_64F);
  for (int i = 0; i < kWindow; ++i) {
    const double away = (i - (kWindow - 1) / 2.0) / kSigma;
    window.at<double>(i) = std::exp(-away * away / 2);
  }
  return window / cv::sum(window)[0];
}

cv::Mat smoothed(const cv::Mat& map) {
  const cv::Mat window = gaussianWindow();
  cv::Mat out;
  const cv::Point middle{kWindow / 2 - 1, kWindow / 2 - 1};
  cv::sepFilter2D(map, out, CV_64F, window, window, middle, 0, cv::BORDER_REPLICATE);
  return out;
}

}  // namespace

PlaceMap spectralResidual(const GreyPicture& picture) {
  if (picture.empty()) return {};
  const OneThread quiet;
  const cv::Mat small = shrunken(picture);
  cv::Mat spectrum, back;
  cv::dft(small, spectrum, cv::DFT_COMPLEX_OUTPUT);
  keepResidual(spectrum);
  cv::dft(spectrum, back, cv::DFT_INVERSE | cv::DFT_SCALE);
  cv::Mat planes[2];
  cv::split(back, planes);
  const cv::Mat power = planes[0].mul(planes[0]) + planes[1].mul(planes[1]);
  return scaledMap(smoothed(power), picture);
}

}  // namespace tw
