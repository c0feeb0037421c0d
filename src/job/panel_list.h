// Pages known only as marked panels: a list of boxes or outlines per page, in any order, from
// another program or traced from a picture. Lengths are in any unit of the file's own, y down.
// What reads in which order, and what the panels show, is for others; see
// docs/formats/panel-list.md.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "base/result.h"
#include "geometry/shapes.h"
#include "job/words.h"

namespace tw {

/// Lettering in a panel.
struct MarkedCopy {
  Rect box;
  std::string words;  ///< the text itself, where it is given
  int count = 0;      ///< words in it; 0 when neither text nor number is given
};

struct MarkedPanel {
  Polygon outline;           ///< polygon, else hull, else the box
  std::optional<int> order;  ///< intended place on the page, from 1
  std::optional<Point> focus;
  std::optional<Vector> lead;  ///< where the panel hands the eye on; not zero
  std::vector<Rect> faces, figures, hands, props;
  std::vector<MarkedCopy> copy;
};

struct MarkedPage {
  std::string name;              ///< as the file names it, or its place in the list, from 1
  double width = 0, height = 0;  ///< of the page; 0 when not given
  std::optional<ReadingDirection> direction;
  std::string picture;  ///< file name of the drawn page, or empty
  std::vector<MarkedPanel> panels;
};

/// Panels of one page that the reader of pages can hold.
inline constexpr std::size_t kMostMarkedPanels = 64;

/// Reads a list of pages, or one page. Gathers what is wrong, each with page, panel and field.
Result<std::vector<MarkedPage>> readPanelList(std::string_view bytes, const std::string& fileName);

/// The intended order as indices into `panels`, when every panel carries a different one.
std::optional<std::vector<int>> intendedOrder(const MarkedPage& page);

}  // namespace tw
