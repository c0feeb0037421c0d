// What is found of a story as a whole: page turns and spreads, settings, full figures, the axis,
// runs of one size, words, tempo. All common practice or ours, and each says so. A page without a
// rough is reported as not measured, never as fine.
#pragma once

#include <vector>

#include "job/finding.h"
#include "job/job.h"
#include "read/seen_story.h"

namespace tw {

/// The most severe first, then along the story.
std::vector<Finding> storyFindings(const Job& job);

// The parts of it, each in the order of the story.

/// "page turn", "spread starts left", "faces in the fold", "copy in the fold".
std::vector<Finding> turnFindings(const Job& job, const SeenStory& story);
/// "setting shown early", "axis kept", "speakers in order", and stretches of "tempo".
std::vector<Finding> sceneFindings(const Job& job, const SeenStory& story);
/// "full figure on the page", "sizes in a row", "words in a panel", "words on the page",
/// "not measured".
std::vector<Finding> pageRhythmFindings(const Job& job, const SeenStory& story);

/// A finding at a panel, or on the page when `panel` is empty; the rest is for the caller to fill.
Finding findingAt(const StoryPage& page, const StoryPanel* panel, const char* rule,
                  Severity severity);

}  // namespace tw
