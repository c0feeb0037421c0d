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

/// The rough on its sheet, its panels not drawn yet. Bad input when it was made for an earlier
/// state of the script.
Result<RoughPicture> blankPictureOf(const Job& job, const Page& page, const Rough& rough);
/// One panel as it prints. `width`: of the render that decides what is seen, px; fewer are quicker.
Drawing drawnPanel(const Stager& stager, const RoughPanel& panel, const Beat& beat,
                   const Brief& brief, int width = DrawOptions{}.width);

/// Every panel of every rough drawn, on `threads` threads (0 = all cores). Bad input when a rough
/// was made for an earlier state of the script.
Result<std::vector<RoughPicture>> picturesOf(const Job& job, const Page& page, const Stager& stager,
                                             unsigned threads, Progress& progress);
/// One rough by name.
Result<RoughPicture> pictureOf(const Job& job, const Page& page, const std::string& rough,
                               const Stager& stager);

}  // namespace tw
