// Draws the stored roughs of a page again: stagings to vectors, ready for the press. Nothing is
// chosen anew, so a sheet shows the very rough that was ranked.
#pragma once

#include <string>
#include <vector>

#include "base/progress.h"
#include "base/result.h"
#include "job/job.h"
#include "press/proof.h"
#include "stage/staging.h"

namespace tw {

/// Every panel of every rough drawn, on `threads` threads (0 = all cores). Bad input when a rough
/// was made for an earlier state of the script.
Result<std::vector<RoughPicture>> picturesOf(const Job& job, const Page& page, const Stager& stager,
                                             unsigned threads, Progress& progress);
/// One rough by name.
Result<RoughPicture> pictureOf(const Job& job, const Page& page, const std::string& rough,
                               const Stager& stager);

}  // namespace tw
