// Puts what a search found into a page that may have been changed while it ran.
#pragma once

#include <string>
#include <vector>

#include "job/job.h"

namespace tw {

/// A page's roughs by name when a search began.
struct RoughsBefore {
  std::vector<std::string>
      kept;  ///< that the search had to leave: the picked one, "unlike these", hand work
  std::vector<std::string> all;
};

/// `now` with the roughs of `found`, the found ones first. Roughs that were kept, that have been
/// picked or that came since the search began stay as they are now; a found one whose name was
/// given meanwhile gets a free one.
Page withFound(const Page& now, const Page& found, const RoughsBefore& before);

}  // namespace tw
