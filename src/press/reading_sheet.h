// How a page will be read, on one sheet: the page pale, over it where eyes rest, one reader's path,
// the steps at which readers part, and numbered findings with their reasons beside the page.
#pragma once

#include <filesystem>
#include <string>
#include <vector>

#include "base/result.h"
#include "job/finding.h"
#include "press/proof.h"
#include "press/surface.h"
#include "press/typesetter.h"

namespace tw {

/// A place on which eyes rest, mm on the page.
struct EyeRest {
  Point at;
  double milliseconds = 0;
  bool onCopy = false;
};

/// Some readers go from one panel to another; 0 stands for the entry.
struct PanelMove {
  int from = 0, to = 0;
  double share = 0;  ///< of those who stand at `from`
  std::string cause;
};

struct ReadingSheet {
  std::string about{};              ///< under the title; empty: job, page and rough
  std::vector<std::string> facts;   ///< one line each, under the title
  std::vector<EyeRest> path;        ///< one reader's, in order
  std::vector<EyeRest> rests;       ///< many readers', for the heat
  std::vector<PanelMove> partings;  ///< moves off the intended order that are worth showing
  std::vector<Finding> findings;    ///< silenced ones are listed last
};

/// The whole sheet on any surface.
void drawReadingSheet(Surface& surface, const RoughPicture& picture, const ReadingSheet& sheet,
                      const Typesetter& typesetter);

/// By the file's extension: .pdf, .svg or .png. `dpi` is the PNG's.
Result<void> writeReadingSheet(const std::filesystem::path& file, const RoughPicture& picture,
                               const ReadingSheet& sheet, double dpi = 150);

}  // namespace tw
