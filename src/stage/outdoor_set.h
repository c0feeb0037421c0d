// Masses of a place in the open, invented from its words: tower, houses, cliff, rocks, trees,
// pier, hills. Each is a shape with size and place; set_pieces puts them into the space.
#pragma once

#include <array>
#include <string>
#include <vector>

#include "job/beat.h"

namespace tw {

/// A mass of the set. `across` and `away` are measured in the view's own ground frame, from the
/// set's middle, so that every camera side still has its set behind the figures.
struct Piece {
  std::string shape;  ///< as in solid_shapes.h, or "boat"
  std::array<double, 3> sizeM;
  double across = 0, away = 0, up = 0, headingDeg = 0;
  bool isOwnPlace = false;  ///< measured from the figures' middle, not from the set's
};

std::vector<Piece> outdoorPieces(const Beat& beat);

/// How high above the seabed somebody swims along a tower's wall.
inline constexpr double kTowerSwimM = 9.5;

}  // namespace tw
