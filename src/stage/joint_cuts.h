// Joints on which the panel's edge falls: an arm that ends at the wrist or a leg that ends at the
// knee reads as cut off. Common practice, no source.
#pragma once

#include "stage/blocking.h"
#include "stage/panel_sight.h"

namespace tw {

/// Of neck, elbows, wrists, knees and ankles, those whose limb runs on beyond the panel. `index` is
/// the figure's solid.
std::vector<JointCut> jointCuts(const PanelSight& sight, const Actor& actor, int index);

}  // namespace tw
