// A page known only as a picture with its panels marked: the same measures as for a staged page.
// What the artist marked is taken; focus, lead and copy that nobody marked are proposed from the
// attention of each panel. Everything here is in mm of a page of kDrawnPageMm.
#pragma once

#include <optional>
#include <vector>

#include "job/panel_list.h"
#include "read/one_picture.h"
#include "read/page_complexity.h"
#include "read/page_handed_on.h"
#include "read/proposed_focus.h"
#include "read/squint.h"

namespace tw {

/// A drawn page has no printed size; its longer side is taken as this, mm, of an upright page and
/// of a spread. Common comic formats are 257 to 260 mm high.
inline constexpr double kDrawnPageMm = 260, kDrawnSpreadMm = 340;

/// From the file's own unit to mm and back.
struct FileScale {
  double mmPerUnit = 1;

  Point onPage(Point p) const { return {p.x * mmPerUnit, p.y * mmPerUnit}; }
  Rect onPage(const Rect& r) const { return {onPage(r.min), onPage(r.max)}; }
  Polygon onPage(const Polygon& polygon) const;
  Point inFile(Point p) const { return {p.x / mmPerUnit, p.y / mmPerUnit}; }
  Rect inFile(const Rect& r) const { return {inFile(r.min), inFile(r.max)}; }
};

struct DrawnPanel {
  Polygon outline;  ///< mm
  PanelAttention attention;
  ProposedFocus focus;
  ProposedLead lead;
  Squint squint;
};

struct DrawnPage {
  FileScale scale;
  Rect page;                       ///< mm
  GreyPicture picture;             ///< placed on the page
  std::vector<DrawnPanel> panels;  ///< as the file has them
  std::vector<int> order;          ///< the intended order, else the likeliest: indices
  ReadingDirection direction = ReadingDirection::LeftToRight;
  OnePicture onePicture;  ///< its panels as the file has them
  PageComplexity complexity;
  PageHandedOn handedOn;  ///< its panels as the file has them
};

/// `order`: panels in the order in which they are meant or likely to be read, as indices. The
/// picture shows the page from edge to edge; without width and height the file's unit is its pixel.
DrawnPage measureDrawnPage(const MarkedPage& marked, GreyPicture picture,
                           const std::vector<int>& order, ReadingDirection direction,
                           const AttentionWeights& weights, unsigned threads = 0);

/// The page as all reading measures take it, panels in `order`.
SeenPage seenPageOf(const DrawnPage& page);

}  // namespace tw
