// A staging that has to be kept in a panel of another shape: its choice is solved again for the
// shape; what the artist set by hand in it stays.
#pragma once

#include "stage/staging.h"

namespace tw {

/// The staging as solved, with pose, turned joints, gaze and light of the kept one. The lens is
/// part of the choice. Figures that the kept one does not show are as solved.
Staging withHandOf(Staging solved, const Staging& kept);

/// The kept staging solved for what the request asks of its panel.
Staging fitted(const Stager& stager, const StageRequest& request, const Staging& kept);

/// Quick measures of a staging that may have been set by hand.
Variant quickVariant(const Stager& stager, const StageRequest& request, const Staging& staging);

}  // namespace tw
