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
};

struct PageRoughs {
  Composed composed;
  double seconds = 0;  ///< wall time of the search
  /// By beat id: things that its description names and no rough shows.
  std::map<std::string, std::vector<std::string>> notDrawn;
};

/// Saves each page as soon as it is done. A rough that the artist has chosen stays, under its
/// name, beside the new ones.
Result<std::vector<PageRoughs>> makeRoughs(const RoughsRequest& request, Progress& progress);

/// The JSON of one page, or of several under "pages" (docs/formats/roughs-output.schema.json).
std::string roughsJson(const std::vector<PageRoughs>& pages);

}  // namespace tw
