// The tempo of a story: how long its panels hold the reader, as a curve over all panels, and the
// stretches that run slow or fast against the story's own middle. Common practice to watch it, no
// source; widths and limits are ours.
#pragma once

#include <vector>

#include "read/seen_story.h"

namespace tw {

/// A weighted mean over the neighbours on both sides, as long as the curve given.
std::vector<double> smoothed(const std::vector<double>& values, double width = 1.5);

struct Stretch {
  std::size_t first = 0, last = 0;  ///< panels of the whole story, from 0
  bool slow = false;                ///< else fast
  double ratio = 1;                 ///< mean time of a panel there over the story's median
};

struct Tempo {
  std::vector<StoryPlace> places;  ///< of the panels, in the order of the pages
  std::vector<double> seconds;     ///< of each panel
  std::vector<double> curve;       ///< smoothed
  double median = 0;               ///< of the smoothed curve
  std::vector<Stretch> stretches;
};

Tempo tempoOf(const SeenStory& story);

/// What a page adds up to.
struct PageTempo {
  double seconds = 0;
  int panels = 0, words = 0;
  double meanAreaShare = 0;  ///< of the sheet; 0 when not measured
  double wordless = 0;       ///< share of its panels
};
PageTempo pageTempoOf(const StoryPage& page);

}  // namespace tw
