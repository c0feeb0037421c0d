// Two figures in one pose: the second is brought to the first, and hands are laid where the pose
// says, whatever the two bodies' sizes. Which beat asks for which pair is told here too.
#pragma once

#include <optional>

#include "stage/figure.h"

namespace tw {

/// A pair a beat asks for, with the indices of its figures.
struct PairInBeat {
  const PairPose* pair = nullptr;
  int first = 0, second = 0;
};

/// By the relation of figure `first`, or by words of the description. `statures` gives a figure's
/// stature by its id.
std::optional<PairInBeat> pairIn(const Beat& beat, int first, const PoseLibrary& poses,
                                 const std::map<std::string, double>& statures);

/// Both figures set: the first stays where `first` puts it, its hands and the whole of the second
/// are moved. Poses, places, headings and turns of the arms are filled; nothing is mirrored.
std::array<SetFigure, 2> paired(const PairPose& pair, const Body& firstBody, const Body& secondBody,
                                const SetFigure& first);

/// How far each of the pair's hands is from where it belongs, metres, in the pose's order.
std::vector<double> contactGaps(const PairPose& pair, const Body& firstBody, const Body& secondBody,
                                const std::array<SetFigure, 2>& sets);

}  // namespace tw
