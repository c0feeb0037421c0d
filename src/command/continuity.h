// Continuity of the whole story: the scenes in story time, every character's look in each, and what
// does not hold together. Also as a chart to hang on the wall.
#pragma once

#include <filesystem>
#include <optional>
#include <string>
#include <vector>

#include "base/progress.h"
#include "job/job.h"
#include "review/continuity.h"

namespace tw {

/// A character's look in a scene, as it is at their first panel there.
struct LookShown {
  std::string who, scene, beat;
  std::vector<std::string> worn, marks, hands;  ///< "cut on the left cheek", "lantern: right"
  bool changed = true;                          ///< against the scene before, in story time
};

struct StoryContinuity {
  Job job;
  std::vector<StoryScene> scenes;  ///< in story order
  std::vector<LookShown> looks;    ///< by character, then scene
  std::vector<ContinuityFinding> findings;
};

/// Where pages have roughs, hands are checked as the chosen one, or else the best, stages them.
Result<StoryContinuity> storyContinuity(const std::filesystem::path& job);
std::string continuityJson(const StoryContinuity& story);

struct ContinuitySheetRequest {
  std::vector<std::filesystem::path> files;  ///< .png, .svg or .pdf
  double dpi = 150;
  unsigned threads = 0;
};
/// Rows of characters, columns of scenes in story time, a figure for each look.
Result<void> writeContinuitySheets(const std::filesystem::path& job, const StoryContinuity& story,
                                   const ContinuitySheetRequest& request, Progress& progress);

}  // namespace tw
