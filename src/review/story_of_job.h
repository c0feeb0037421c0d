// The job's story as the measures of story and rhythm take it: the script's panels page by page,
// and what is seen of them in the rough that stands for each page.
#pragma once

#include "job/job.h"
#include "read/seen_story.h"

namespace tw {

/// A page is measured when it has a rough all of whose panels are still in the script.
SeenStory storyOf(const Job& job);

/// The rough that is measured, or null: none yet, or one made for another draft of the script.
const Rough* measuredRoughOf(const Page& page);

}  // namespace tw
