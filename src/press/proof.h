// Roughs on paper: one drawing surface behind PDF, SVG and PNG. PDF pages carry exact MediaBox,
// BleedBox and TrimBox, embedded fonts, and optional-content layers for the overlays, so that the
// rough alone can be sent to an editor.
#pragma once

#include <filesystem>
#include <string>
#include <vector>

#include "base/result.h"
#include "geometry/drawing.h"
#include "geometry/perspective.h"
#include "job/job.h"

namespace tw {

/// A rough together with the pictures of its panels, ready to print.
struct RoughPicture {
  Sheet sheet;
  bool rightHand = true;
  int page = 1;
  std::string jobTitle;
  ReadingDirection direction = ReadingDirection::LeftToRight;
  Rough rough;
  std::vector<Drawing> panels;         ///< one per rough panel
  std::vector<PerspectiveGrid> grids;  ///< one per rough panel
  std::vector<KeepClear> keepClear;
  std::string notDrawn;  ///< things that the script names and nothing shows, in words
};

struct Overlays {
  bool order = false;  ///< panel numbers
  bool leads = false;  ///< leads and the path of the eye
  bool live = false;   ///< trim, live area, keep-clear zones
  bool card = false;   ///< score card in words, beside the page
  bool grid = false;   ///< horizon, vanishing points, squares on the ground, for pencilling
};

/// One PDF page per picture: the bare page at size, overlays as optional content per `overlays`
/// (those switched on are visible when the file opens).
Result<void> writePdf(const std::filesystem::path& file, const std::vector<RoughPicture>& pages,
                      const Overlays& overlays);
Result<void> writeSvg(const std::filesystem::path& file, const RoughPicture& page,
                      const Overlays& overlays);
Result<void> writePng(const std::filesystem::path& file, const RoughPicture& page,
                      const Overlays& overlays, double dpi = 150);

/// All roughs of one page side by side on a landscape sheet, with name, score and the two
/// dearest lines of each score card. By the file's extension: .pdf, .svg or .png.
Result<void> writeContactSheet(const std::filesystem::path& file,
                               const std::vector<RoughPicture>& roughs);

/// The whole proof as one PDF: for each page its contact sheet, then a sheet per rough.
Result<void> writeProof(const std::filesystem::path& file,
                        const std::vector<std::vector<RoughPicture>>& pages);

}  // namespace tw
