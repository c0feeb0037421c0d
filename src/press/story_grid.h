// Where everything stands on one sheet of the story's map: rows of facing pairs, the slot of every
// page, the column of every panel below it, the lanes of the curves. Pure geometry, in mm.
#pragma once

#include <vector>

#include "press/story_map.h"

namespace tw {

enum class StoryLane { Time, Words, Shots, Areas };
inline constexpr int kStoryLanes = 4;

struct Span {
  double from = 0, to = 0;  ///< from < to, also where the story runs to the left
  double middle() const { return (from + to) / 2; }
  double width() const { return to - from; }
};

/// Facing pairs are counted by half their even page's number: page 1 is in pair 0, 2 and 3 in 1.
inline int pairOf(int pageNumber) {
  return pageNumber / 2;
}

class StoryGrid {
 public:
  /// `listHigh`: what the list of findings needs; lanes grow into what it leaves.
  StoryGrid(const StoryMap& map, int firstPair, int pairs, double listHigh = 0);

  static Rect paper() { return {{0, 0}, {420, 297}}; }  ///< A3 on its side
  bool holds(int pageNumber) const;
  int rows() const { return static_cast<int>(tops_.size()); }
  int rowOf(int pageNumber) const;
  double scale() const { return scale_; }

  Rect slot(int pageNumber) const;  ///< of the page in miniature
  /// Where the page after it must be turned to: beside the slot of an odd page.
  Point turnAfter(int oddPage) const;
  /// Below the page: an equal share of its width for every panel.
  Span column(const StoryMapPage& page, std::size_t panel) const;

  double headLine(int row) const;    ///< middle of the strip above the pages
  double numberLine(int row) const;  ///< baseline of the page numbers
  Rect band(int row) const;          ///< of the scenes, with two lines of words above and below
  Rect lane(int row, StoryLane lane) const;
  Rect list() const;  ///< what is left for the findings
  Rect labels(int row, StoryLane lane) const;

  static constexpr double kMargin = 11, kHeadHigh = 15, kKeyHigh = 7;

 private:
  double mirroredX(double x) const;

  const StoryMap& map_;
  int first_, pairs_, perRow_ = 1;
  bool startsOnOdd_ = false;  ///< nothing faces the first page
  double scale_ = 0, pageWide_ = 0, pageHigh_ = 0, laneHigh_ = 0, laneGap_ = 0;
  std::vector<double> tops_;
};

/// First pair and number of pairs of each sheet: one sheet as long as the pages stay legible.
std::vector<std::pair<int, int>> storySheets(const StoryMap& map);

}  // namespace tw
