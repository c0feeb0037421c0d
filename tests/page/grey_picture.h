// Small grey pictures for golden pages: read from a PNG, made small, compared as an eye would that
// stands back from the page.
#pragma once

#include <cstdint>
#include <filesystem>
#include <vector>

namespace tw::tests {

struct GreyPicture {
  int width = 0, height = 0;
  std::vector<std::uint8_t> value;  ///< row by row, 0 black … 255 paper
};

/// Fails the test when it cannot be read.
GreyPicture readGreyPng(const std::filesystem::path& file);
void writeGreyPng(const std::filesystem::path& file, const GreyPicture& picture);

/// Means over boxes.
GreyPicture thumbnail(const GreyPicture& picture, int width);
GreyPicture mirrored(const GreyPicture& picture);

struct Difference {
  double mean = 0;   ///< over the picture, 0 … 1
  double worst = 0;  ///< mean of the worst square of kSquarePx, 0 … 1
  GreyPicture map;   ///< paper where alike
};
inline constexpr int kSquarePx = 12;
/// Pictures of unlike size differ by 1.
Difference difference(const GreyPicture& a, const GreyPicture& b);

/// A line that moved by a pixel of the thumbnail is let pass, a thing that moved or is missing is
/// not. Chosen by looking at what changes when the demo is drawn with and without its chain.
inline constexpr double kMostMean = 0.012, kMostWorst = 0.16;
inline bool looksAlike(const Difference& d) {
  return d.mean <= kMostMean && d.worst <= kMostWorst;
}

}  // namespace tw::tests
