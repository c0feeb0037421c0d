// A stored panel of a rough made ready to draw: its solids with the focus marked, and its light.
#pragma once

#include "stage/light.h"
#include "stage/staging.h"
#include "stage/value_plan.h"

namespace tw {

/// Everything before the camera at full detail; the figure `focus`, or the first, is the focus.
std::vector<Solid> drawnSolids(const Stager& stager, const RoughPanel& panel, const Beat& beat,
                               const std::string& focus);

/// The panel's drawing and value plan in the light that it was staged with.
PlannedPanel plannedPanel(const Stager& stager, const RoughPanel& panel, const Beat& beat,
                          const std::string& focus, const DrawOptions& options,
                          const LightWords& lights);

}  // namespace tw
