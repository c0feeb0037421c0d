// Copy that was retyped, set into the roughs that are there, so that no sheet prints words that are
// no longer the beat's.
#pragma once

#include <string>

#include "base/result.h"
#include "job/job.h"
#include "letter/lettering.h"

namespace tw {

/// Letters the beat's panel in every rough of the page with the words as corrected. Balloons placed
/// by hand keep their middles. The cards are as they were until a rough is measured again, and say
/// so.
Result<void> letterAgain(Page& page, const Job& job, const std::string& beat,
                         const Letterer& letterer);

}  // namespace tw
