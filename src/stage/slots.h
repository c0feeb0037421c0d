// Places on the floor for the figures of a beat, in the order in which they are read, and what the
// words of a relation ("runs to", "sits on", "pushes") mean for where a figure stands.
#pragma once

#include <string>
#include <vector>

#include "stage/blocking.h"

namespace tw {

bool has(const std::string& text, std::string_view word);
int figureIndexOf(const Beat& beat, const std::string& who);
int propIndexOf(const Beat& beat, const std::string& id);

bool movesToward(const BeatFigure& figure);
bool turnsAway(const BeatFigure& figure);
/// The figure stands, sits or lies on or in the thing.
bool restsOn(const BeatFigure& figure);
/// The figure is in touch with the thing.
bool touches(const BeatFigure& figure);

/// Beat indices from the side read first: speakers by their first word, then whoever moves, then
/// the rest; whoever points out of the group last.
std::vector<int> readingOrderOf(const Beat& beat);

struct Slots {
  std::vector<Vec3> at;  ///< in reading order
  double opened = 0.4;   ///< share of the turn toward the audience
};
/// `order` from readingOrderOf, `focus` a beat index.
Slots slotsFor(const Beat& beat, const std::vector<int>& order, int placement, int focus);

}  // namespace tw
