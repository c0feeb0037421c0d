// How a figure stands out by lightness from what surrounds it in the panel, before any value plan:
// costume and set in their own values, in the panel's light.
#pragma once

#include "stage/light.h"
#include "stage/panel_sight.h"
#include "stage/set_lines.h"

namespace tw {

/// CIE L* of every pixel of the panel's picture.
std::vector<float> lightnessPicture(const PanelSight& sight, const Mood& mood,
                                    const Lighting& light);

/// Mean L* of the figure that is solid `index` less that of the 3 mm around it; 0 when it is not
/// seen or nothing surrounds it. Over 0 is a light figure on a dark ground.
double groundContrast(const PanelSight& sight, const std::vector<float>& lightness, int index);

}  // namespace tw
