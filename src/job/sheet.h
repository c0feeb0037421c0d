// The paper a page is made for: trim, bleed, live area, gutters, board. All mm.
#pragma once

#include <string>
#include <vector>

#include "base/result.h"
#include "geometry/shapes.h"

namespace tw {

/// Distances from the trim inward, mm. On a spread, inner is the fold side of each half.
struct Margins {
  double top = 0, bottom = 0, inner = 0, outer = 0;
  bool operator==(const Margins&) const = default;
};

/// A scan or canvas of the trim with its bleed, as the sheet's source states it; 0 = not stated.
struct Canvas {
  int dpi = 0, width = 0, height = 0;
  bool operator==(const Canvas&) const = default;
};

struct Sheet {
  std::string name;    ///< file name of the preset without .json
  std::string title;   ///< for people: "US comic book, 6⅝ × 10¼ in"
  std::string source;  ///< where the numbers come from, in words
  double trimWidth = 0, trimHeight = 0;
  double bleed = 0;
  Margins live;             ///< trim to live area
  double gutterAcross = 0;  ///< between panels side by side
  double gutterDown = 0;    ///< between tiers
  double leastPanelWidth = 0, leastPanelHeight = 0;
  double boardWidth = 0, boardHeight = 0;  ///< drawn area of the original
  double reduction = 1;                    ///< print size / drawn size
  std::string boardHolds = "trim";  ///< what the drawn area prints as: "live", "trim" or "bleed"
  bool spread = false;              ///< two facing pages as one; trimWidth is both
  double pageWidth = 0;             ///< trim of one page of a spread; 0 = half of trimWidth
  Canvas canvas;

  Rect trimRect() const { return {{0, 0}, {trimWidth, trimHeight}}; }
  Rect bleedRect() const { return trimRect().outset(bleed); }
  /// Live area. A single page is taken as a right-hand page (inner = left) when `rightHand`.
  /// Of a spread it is one area across the fold; keep faces and copy out of foldRect().
  Rect liveRect(bool rightHand) const;
  /// The strip along a spread's fold that the binding swallows; no width on a single page.
  Rect foldRect() const;
  bool operator==(const Sheet&) const = default;
};

/// What the drawn area of the board prints as: the live area, the trim or the trim with bleed.
Rect printedBoardArea(const Sheet& sheet);

/// All reasons for which the sheet contradicts itself; empty when it is sound.
Problems contradictionsOf(const Sheet& sheet);

/// The preset of that name (presets/sheets/NAME.json), the spread of one (NAME-spread), or the
/// JSON file at that path.
Result<Sheet> loadSheet(const std::string& nameOrPath);
/// Names of all sheet presets, sorted.
std::vector<std::string> sheetNames();
/// The two-page sheet made of two of these: 2 × trim + 2 × bleed wide, no inner bleed.
Sheet spreadOf(const Sheet& single);

}  // namespace tw
