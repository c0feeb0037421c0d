// Does a page show somebody from head to foot: what tells a reader how people stand to each other
// and to the place. Common practice, no source: at least once a page. How much of an uncut figure
// must be in sight to count is ours.
#pragma once

#include "read/seen_story.h"

namespace tw {

inline constexpr double kFullFigureSeen = 0.75;  ///< of its own outline

struct FullFigure {
  bool wanted = false;  ///< somebody is on the page at all
  double shown = 0;     ///< the most that is seen of an uncut figure, 0…1
  int panel = 0;        ///< where, from 1; 0: nobody is uncut
  bool isKept() const { return !wanted || shown >= kFullFigureSeen; }
};

FullFigure fullFigureOn(const StoryPage& page);

}  // namespace tw
