// Six ranked roughs of each page asked for, written into the job. Demands of a brief that even the
// best rough misses are no error: they come back beside the roughs.
#pragma once

#include <filesystem>
#include <map>
#include <optional>
#include <string>
#include <vector>

#include "base/progress.h"
#include "compose/compose.h"

namespace tw {

struct RoughsRequest {
  std::filesystem::path job;
  std::optional<int> page;  ///< nothing: every page
  ComposeOptions options;
  std::string rulesFile;  ///< empty: the rules that come with the program
  /// Roughs of the page that stay beside the new ones, which are to be unlike them. One page only.
  std::vector<std::string> unlike = {};
};

struct PageRoughs {
  Composed composed;
  double seconds = 0;  ///< wall time of the search
  int replaced = 0;    ///< roughs that stood there before and were not kept
  /// By beat id: things that its description names and no rough shows.
  std::map<std::string, std::vector<std::string>> notDrawn;
};

/// The page as new roughs leave it, and what the search says of them; nothing is written. The
/// chosen rough, those named in `unlike` and those with work of the artist's own hand stay, under
/// their names, in the artist's order. Bad input when the page has none of such a name.
struct FoundRoughs {
  Page page;
  Composed composed;  ///< its roughs are the page's
};
Result<FoundRoughs> findRoughs(const Job& job, const Page& page, const Workshop& workshop,
                               const ComposeOptions& options,
                               const std::vector<std::string>& unlike, Progress& progress);

/// findRoughs for each page; saves each as soon as it is done.
Result<std::vector<PageRoughs>> makeRoughs(const RoughsRequest& request, Progress& progress);

/// The JSON of one page, or of several under "pages" (docs/formats/roughs-output.schema.json).
std::string roughsJson(const std::vector<PageRoughs>& pages);

}  // namespace tw
