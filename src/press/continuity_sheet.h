// The continuity chart: a row for each character, a column for each scene in story time, a drawn
// figure wherever the look changes, reference pictures beside the name, findings below.
#pragma once

#include <filesystem>
#include <string>
#include <vector>

#include "base/result.h"
#include "geometry/drawing.h"

namespace tw {

struct ContinuityCell {
  bool seen = false;  ///< the character is in that scene
  struct Figure {
    Drawing whole, head;  ///< mm from the corners of their own frames
  };
  std::vector<Figure> figures;     ///< one for each look new there
  std::vector<std::string> words;  ///< what is new, a line each
  std::vector<int> findings;       ///< numbers in the list below
};

struct ContinuityColumn {
  std::string id, heading, panels;  ///< "s4", "EXT. THE BOAT - DUSK", "p6-1 to p6-6"
  std::string strand;               ///< empty in the present: "flashback, 10 years earlier"
};

struct ContinuityRow {
  std::string name, note;
  std::vector<std::string> pictures;  ///< bytes of PNG files
  std::vector<std::string> captions;  ///< of reference pictures, all kinds
  std::vector<ContinuityCell> cells;  ///< one for each column
};

struct ContinuitySheet {
  std::string title, about;
  double cellWide = 44, pictureHigh = 48;  ///< mm
  double wholeWide = 34;                   ///< frame of a whole figure, on the cell's right
  double headWide = 15, headHigh = 17;     ///< frame of a head, in the cell's top left corner
  std::vector<ContinuityColumn> columns;
  std::vector<ContinuityRow> rows;
  std::vector<std::string> findings;  ///< "must: …", in order of their numbers
};

/// As large as its cells need. By the file's extension: .pdf, .svg or .png.
Result<void> writeContinuitySheet(const std::filesystem::path& file, const ContinuitySheet& sheet,
                                  double dpi);

}  // namespace tw
