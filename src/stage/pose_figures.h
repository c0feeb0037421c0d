// How well a pose reads in its panel, in numbers, from a rendered picture: reach, silhouette,
// what of hands and face is seen, balance.
#pragma once

#include <string>
#include <vector>

#include "stage/balance.h"
#include "stage/blocking.h"
#include "stage/picture.h"

namespace tw {

struct PoseFigures {
  double reach = 0;  ///< limbs' length in the picture over their true length, mean of four, 0…1
  double openness = 0;     ///< 1 − silhouette over its hull: the air inside the gesture
  double tipsSeen = 0;     ///< of hands, feet and head: how many stand clear of the body, 0…5
  double armsInside = 0;   ///< share of arms and hands that lies within the trunk's own silhouette
  double handsSeen = 0;    ///< share of the hands that nothing hides and the frame shows, 0…1
  double faceSeen = 0;     ///< the same of the head, times how far it faces the eye, 0…1
  double inFrame = 0;      ///< share of the figure that the frame shows, 0…1
  double limbsInside = 0;  ///< share of head, arms and legs inside other bodies and things, 0…1
  Balance balance;
  std::vector<std::string> limits;  ///< joints at their limit
};

/// `solids` are the whole scene's; the one with that figure index is judged.
PoseFigures poseFigures(const Actor& actor, int figure, const std::vector<Solid>& solids,
                        const Camera& camera, int width = 180);

/// One number to rank by, 0…1 and a little beyond: more is better. Weights are common practice,
/// no source; Secord et al. 2011 fitted such a sum, but their weights were not found.
double readability(const PoseFigures& figures);

}  // namespace tw
