// In which direction a figure leads the eye, in the space: the limb that points, the way it moves,
// the way it looks, in that order of strength. What is left of it on the picture is measured later.
#pragma once

#include "stage/blocking.h"

namespace tw {

/// The lead of a figure before any projection: where it points, moves or looks.
struct WorldLead {
  Vec3 direction = Vec3::Zero();  ///< unit, or zero
  double strength = 0;            ///< before foreshortening, 0…1
  enum class By { Nothing, Pointing, Motion, Gaze } by = By::Nothing;
  Vec3 from = Vec3::Zero();
};
/// Strongest first: limb, motion, gaze.
std::vector<WorldLead> leadsOf(const Actor& actor, bool points);
/// True when the figure's words or pose make its limb lead the eye.
bool pointsWithLimb(const BeatFigure& figure, const Pose& pose);

}  // namespace tw
