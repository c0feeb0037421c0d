// What the editor asks of one page. Every field has a default that asks for nothing special.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "geometry/shapes.h"
#include "job/words.h"

namespace tw {

/// An area in which no panel content that matters may stand (logo, credits), mm on the page.
struct KeepClear {
  std::string name;
  Rect rect;
  bool operator==(const KeepClear&) const = default;
};

struct Brief {
  std::optional<int> leastSmallPanels, mostSmallPanels;
  std::string dominantBeat;       ///< beat id; empty: the beat marked dominant, if any
  double leastDominantShare = 0;  ///< of the area of all panels, 0…1; 0 asks nothing
  std::string focus;              ///< character id; empty: whoever the beat names first
  double leastHeadMm = 0;         ///< focus head height in every panel at print size; 0 = any
  bool largestInPanel = false;    ///< focus must be the largest figure wherever it appears
  bool wholeFigure = false;       ///< dominant figure uncropped
  bool liftable = false;          ///< dominant figure uncropped and unobscured
  std::vector<KeepClear> keepClear;
  bool bleeds = true;   ///< bleeds allowed
  int mostWords = 210;  ///< per page; common practice, facts in docs/facts.md
  ReadingDirection direction = ReadingDirection::LeftToRight;
  std::string due;  ///< ISO 8601 date or empty
  bool operator==(const Brief&) const = default;
};

}  // namespace tw
