// The editor's brief of a page and the artist's corrections of its beats, shown and changed. Of
// several changes in one call all are saved or none.
#pragma once

#include <filesystem>
#include <string>
#include <vector>

#include "base/result.h"
#include "job/override_keys.h"

namespace tw {

struct BriefShown {
  Job job;
  Page page;
  Problems contradictions;  ///< between the brief and the page; empty when it can be worked to
};

/// Poses, relations, things and lights that a correction in that job may name.
Result<KnownWords> knownWordsOf(const std::filesystem::path& job);

/// Applies KEY=VALUE settings in order, all or none, and saves; no settings only shows.
Result<BriefShown> changeBrief(const std::filesystem::path& job, int page,
                               const std::vector<std::string>& settings);

/// Applies "p3-2.shot=close-up" and the like, all or none, and saves.
Result<void> changeBeats(const std::filesystem::path& job,
                         const std::vector<std::string>& settings);

}  // namespace tw
