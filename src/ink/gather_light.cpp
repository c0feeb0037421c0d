// Averaging down.
//
// Idea. A target pixel covers a rectangle of the source; its light is the mean of what it covers,
// source pixels at the rim counting by the covered part (box filter). A source pixel is never
// larger than a target pixel, so that it falls into two columns and two rows at most.
// Cost: one multiplication or two a source pixel; memory of the target only.
// Badly done: a box filter lets a very fine regular pattern beat against the target's grid. Squint
// tests and attention maps blur far more than that.
// Source: sRGB is IEC 61966-2-1:1999, luminance weights Rec. ITU-R BT.709, L* ISO/CIE 11664-4.
#include "ink/gather_light.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "base/result.h"

namespace tw {

namespace {

double linearOf(double srgb) {
  return srgb <= 0.04045 ? srgb / 12.92 : std::pow((srgb + 0.055) / 1.055, 2.4);
}

const std::array<double, 256>& linearTable() {
  static const std::array<double, 256> table = [] {
    std::array<double, 256> t{};
    for (int i = 0; i < 256; ++i) t[i] = linearOf(i / 255.0);
    return t;
  }();
  return table;
}

std::uint8_t overPaper(std::uint8_t value, std::uint8_t alpha) {
  return static_cast<std::uint8_t>((value * alpha + 255 * (255 - alpha) + 127) / 255);
}

int scaledSide(int side, int longer, int most) {
  if (most <= 0 || longer <= most) return side;
  return std::max(1, static_cast<int>(std::lround(static_cast<double>(side) * most / longer)));
}

}  // namespace

float lightOfLuminance(double luminance) {
  constexpr double kFoot = 216.0 / 24389, kSlope = 24389.0 / 27;
  const double l = luminance > kFoot ? 116 * std::cbrt(luminance) - 16 : kSlope * luminance;
  return static_cast<float>(std::clamp(l / 100, 0.0, 1.0));
}

double luminanceOf(Rgba c) {
  const std::array<double, 256>& linear = linearTable();
  return 0.2126 * linear[overPaper(c.red, c.alpha)] + 0.7152 * linear[overPaper(c.green, c.alpha)] +
         0.0722 * linear[overPaper(c.blue, c.alpha)];
}

std::vector<LightGatherer::Split> LightGatherer::splits(int from, int to) {
  std::vector<Split> all(from);
  const double scale = static_cast<double>(to) / from;
  for (int i = 0; i < from; ++i) {
    const double begin = i * scale, end = (i + 1) * scale;
    const int first = std::min(static_cast<int>(begin + 1e-9), to - 1);
    const double within = std::clamp((first + 1 - begin) / (end - begin), 0.0, 1.0);
    const bool one = within > 1 - 1e-6 || first + 1 >= to;
    all[i] = {first, one ? first : first + 1, one ? 1.0 : within};
  }
  return all;
}

LightGatherer::LightGatherer(int width, int height, int mostSide)
    : width_(width),
      height_(height),
      targetWidth_(scaledSide(width, std::max(width, height), mostSide)),
      targetHeight_(scaledSide(height, std::max(width, height), mostSide)) {
  columns_ = splits(width_, targetWidth_);
  rows_ = splits(height_, targetHeight_);
  sums_.resize(static_cast<std::size_t>(targetWidth_) * targetHeight_);
  line_.resize(targetWidth_);
}

void LightGatherer::addRow(std::span<const Rgba> row) {
  ensure(next_ < height_ && static_cast<int>(row.size()) == width_, "a row of the picture's width");
  std::fill(line_.begin(), line_.end(), 0.0);
  for (int x = 0; x < width_; ++x) {
    const double light = luminanceOf(row[x]);
    const Split& s = columns_[x];
    line_[s.first] += light * s.share;
    line_[s.second] += light * (1 - s.share);
  }
  const Split& s = rows_[next_++];
  double* first = sums_.data() + static_cast<std::size_t>(s.first) * targetWidth_;
  double* second = sums_.data() + static_cast<std::size_t>(s.second) * targetWidth_;
  for (int x = 0; x < targetWidth_; ++x) {
    first[x] += line_[x] * s.share;
    second[x] += line_[x] * (1 - s.share);
  }
}

GreyPicture LightGatherer::finished() {
  ensure(next_ == height_, "all rows of the picture");
  GreyPicture picture{.width = targetWidth_, .height = targetHeight_};
  picture.light.resize(sums_.size());
  const double covered =
      static_cast<double>(targetWidth_) * targetHeight_ / (static_cast<double>(width_) * height_);
  for (std::size_t i = 0; i < sums_.size(); ++i)
    picture.light[i] = lightOfLuminance(sums_[i] * covered);
  return picture;
}

}  // namespace tw
