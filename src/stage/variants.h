// Which stagings of a beat are worth measuring: a fixed, varied list of discrete choices. The
// asked-for shot and eye height come first; every choice is followed by its mirror image, so that
// a lead to either side is always on offer.
#pragma once

#include <vector>

#include "stage/blocking.h"

namespace tw {

/// At most `most` different choices, best guesses first. Depends on the request alone.
std::vector<StagingChoice> choicesFor(const StageRequest& request, std::size_t most);

/// The shot and eye height that the request asks for, or that its beat wants by itself.
ShotSize wantedShot(const StageRequest& request);
EyeHeight wantedEye(const StageRequest& request);

}  // namespace tw
