// How much detail is left at arm's length: the scales of the squint test and of the page as one
// picture. 1 degree is 7.0 mm on a page held at 40 cm (2 · 400 · tan 0.5°) and 10.5 mm at 60 cm.
#pragma once

#include <algorithm>

#include "geometry/grey_picture.h"

namespace tw {

/// One degree of sight on a page at arm's length, 60 cm, mm. The distance is our choice.
inline constexpr double kDegreeAtArmMm = 10.5;
/// … and on a page held for reading at 40 cm.
inline constexpr double kDegreeAtReadingMm = 7.0;

/// A squint leaves about half a degree: a blur of sigma a quarter of a degree. Our choice.
inline constexpr double kSquintCentreMm = 0.25 * kDegreeAtArmMm;
/// What a place is held against: four times as wide. Our choice.
inline constexpr double kSquintSurroundMm = 4 * kSquintCentreMm;
/// The whole page is taken in more coarsely: twice both. Our choice.
inline constexpr double kPageCentreMm = 2 * kSquintCentreMm;
inline constexpr double kPageSurroundMm = 2 * kSquintSurroundMm;
/// Pixels of the small picture: half the blur, so that nothing that is left is lost.
inline constexpr double kSquintPxMm = 1.3;

/// Longer side of the small picture of something so large.
inline int squintSide(double longerMm) {
  return std::clamp(static_cast<int>(longerMm / kSquintPxMm + 0.5), 16, 320);
}

}  // namespace tw
