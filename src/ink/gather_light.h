// Takes a picture row by row as it is decoded and keeps only how light it is, averaged down to the
// size that is wanted. The average is of light itself (linear luminance), as an eye at a distance
// takes it, and is turned into L* at the end.
#pragma once

#include <cstdint>
#include <span>
#include <vector>

#include "geometry/grey_picture.h"

namespace tw {

/// One colour of a decoded row; alpha 255 hides the paper.
struct Rgba {
  std::uint8_t red = 0, green = 0, blue = 0, alpha = 255;
};

/// CIE L* / 100 of a luminance 0 … 1 (ISO/CIE 11664-4).
float lightOfLuminance(double luminance);
/// Luminance of an sRGB colour over white paper (IEC 61966-2-1, Rec. 709 primaries). The colour is
/// laid over the paper in sRGB, as drawing programs do.
double luminanceOf(Rgba colour);

class LightGatherer {
 public:
  /// `mostSide` 0: as large as the picture.
  LightGatherer(int width, int height, int mostSide);
  /// Rows come from the top, exactly `height` of them.
  void addRow(std::span<const Rgba> row);
  GreyPicture finished();

 private:
  /// Which target cells a source pixel falls into, and the share in the first.
  struct Split {
    int first = 0, second = 0;
    double share = 1;
  };
  static std::vector<Split> splits(int from, int to);

  int width_, height_;
  std::vector<Split> columns_, rows_;
  std::vector<double> sums_;
  std::vector<double> line_;
  int next_ = 0, targetWidth_, targetHeight_;
};

}  // namespace tw
