// The whole story as its reader turns through it: every page measured as it stands, tempo, page
// turns, and what is found of them. Also as a map of all spreads to hang on the wall.
#pragma once

#include <filesystem>
#include <string>
#include <vector>

#include "base/progress.h"
#include "job/job.h"
#include "read/page_turns.h"
#include "read/setting_shown.h"
#include "read/tempo.h"

namespace tw {

struct StoryTold {
  Job job;
  SeenStory story;
  Tempo tempo;
  std::vector<Reveal> reveals;
  std::vector<SettingShown> settings;
  std::vector<Finding> findings;  ///< the most severe first
};

/// Of each page the chosen rough, or else the best, is measured.
Result<StoryTold> storyTold(const std::filesystem::path& job);
std::string storyJson(const StoryTold& told);
/// A table: the head first, then a line for each page.
std::vector<std::vector<std::string>> storyRows(const StoryTold& told);

struct StoryMapRequest {
  std::vector<std::filesystem::path> files;  ///< .png, .svg or .pdf
  double dpi = 150;
  unsigned threads = 0;
};
/// The map on one sheet, or on several where the story is long: a PDF gets more pages, the others
/// more files ("map-2.png").
Result<void> writeStoryMaps(const std::filesystem::path& job, const StoryTold& told,
                            const StoryMapRequest& request, Progress& progress);

}  // namespace tw
